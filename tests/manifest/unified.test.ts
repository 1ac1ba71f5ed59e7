import { readFileSync } from "node:fs";
import { join } from "node:path";
import { unzipSync } from "fflate";
import { expect, inject, test } from "vitest";
import { COMMANDS } from "../../src/host/commands";
import { schemaFaultsOf, unifiedFaults } from "./unified";

const source = readFileSync("manifest/manifest.xml", "utf8");
const text = readFileSync(join(inject("pages"), "unified/manifest.json"), "utf8");
const built = JSON.parse(text);

test("the unified manifest follows the published schema, in development and as built", () => {
  expect(unifiedFaults(source)).toEqual([]);
  expect(schemaFaultsOf(built)).toEqual([]);
});

test("the schema is asked: a set without a name, an icon of another size are seen", () => {
  const wrong = structuredClone(built);
  delete wrong.extensions[0].requirements.capabilities[0].name;
  wrong.extensions[0].ribbons[0].tabs[0].groups[0].icons[0].size = 17;
  expect(schemaFaultsOf(wrong).length).toBeGreaterThanOrEqual(2);
});

test("it says what the XML says: Id, version, sets, namespace, commands", () => {
  const [{ requirements, runtimes, contextMenus }] = built.extensions;
  const xml = readFileSync(join(inject("pages"), "manifest.xml"), "utf8");
  expect(xml).toContain(`<Id>${built.id}</Id>`);
  expect(xml).toContain(`<Version>${built.version}.0</Version>`);
  for (const { name, minVersion } of requirements.capabilities)
    expect(xml).toContain(`<Set Name="${name}" MinVersion="${minVersion}"/>`);
  const [{ actions, customFunctions, lifetime }] = runtimes;
  expect(lifetime).toBe("long");
  expect(customFunctions.namespace.id).toBe("BLADE");
  expect(customFunctions.metadataUrl).toMatch(/\/functions\.json$/);
  expect(actions.map(({ id }: { id: string }) => id).sort()).toEqual(["ShowPane", ...COMMANDS].sort());
  expect(contextMenus[0].menus[0].controls[0].label).toBe("Explain this cell");
  expect(text).not.toMatch(/localhost|BLADEDEV|development/);
});

test("the app package holds it with icons of 192 and 32 pixels", () => {
  const files = unzipSync(readFileSync(join(inject("pages"), "unified/app-package.zip")));
  expect(Object.keys(files).sort()).toEqual(["color.png", "manifest.json", "outline.png"]);
  expect(Buffer.from(files["manifest.json"] ?? []).toString()).toBe(text);
  // Width and height stand in the first chunk of a PNG file: ISO/IEC 15948, 11.2.2.
  const sizes = ["color.png", "outline.png"].map((name) => Buffer.from(files[name] ?? []).readUInt32BE(16));
  expect(sizes).toEqual([192, 32]);
});
