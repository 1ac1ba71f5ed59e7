import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";

const manifest = readFileSync("manifest/manifest.xml", "utf8").replace(/<!--[\s\S]*?-->/g, "");

/** Namespaces are names, not addresses that anything opens. */
const addresses = [...manifest.matchAll(/(?<!xmlns(?::\w+)?=)"(https?:[^"]*)"/g)].map(([, address]) =>
  String(address),
);

describe("what the add-in asks for", () => {
  test("the document alone: to read cells and to write formulas the user asks for", () => {
    expect([...manifest.matchAll(/<Permissions>([^<]*)</g)].map(([, word]) => word)).toEqual([
      "ReadWriteDocument",
    ]);
    expect(manifest).not.toMatch(/ReadWriteMailbox|<Scopes|<WebApplicationInfo|EquivalentAddins/);
  });

  test("one program, no further address", () => {
    expect([...manifest.matchAll(/<Host Name="([^"]*)"/g)].map(([, host]) => host)).toEqual(["Workbook"]);
    expect(manifest).not.toContain("<AppDomain>");
  });

  test("every address is https and of the one host that serves it", () => {
    expect(addresses.length).toBeGreaterThan(5);
    expect(new Set(addresses.map((address) => new URL(address).origin))).toEqual(
      new Set(["https://localhost:3000"]),
    );
  });
});
