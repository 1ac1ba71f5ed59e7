import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { describe, expect, inject, test } from "vitest";
import { version } from "../../package.json";
import { NAMESPACE } from "../../src/functions/catalogue";
import { type Node, parseXml, textOf } from "./xml";

const require = createRequire(import.meta.url);
const {
  DEVELOPMENT_HOST,
  PLACEHOLDER_HOST,
  manifestFor,
  productionHost,
} = require("../../manifest/hosting.cjs");

const source = readFileSync("manifest/manifest.xml", "utf8");
const root = await parseXml(source);
const overrides = root.only("VersionOverrides");
const host = overrides.only("Hosts").only("Host");
const forms = host.only("DesktopFormFactor");
const resources = overrides.only("Resources");

/** Names of the children in the order given; children that are absent are left out of the expectation. */
function expectOrder(node: Node, order: readonly string[]): void {
  const names = node.children.map(({ name }) => name);
  expect(names, node.name).toEqual(order.filter((name) => names.includes(name)));
}

function attribute(node: Node, name: string): string {
  const value = node.attributes[name];
  if (value === undefined) throw new Error(`${node.name} has no ${name}`);
  return value;
}

const definitions = ["bt:Images", "bt:Urls", "bt:ShortStrings", "bt:LongStrings"].flatMap(
  (list) => resources.only(list).children,
);

/** Element order: "How to find the proper order of manifest elements" of the Office add-in documentation. */
describe("order of elements", () => {
  test("of the base", () => {
    expectOrder(root, [
      "Id",
      "Version",
      "ProviderName",
      "DefaultLocale",
      "DisplayName",
      "Description",
      "IconUrl",
      "HighResolutionIconUrl",
      "SupportUrl",
      "AppDomains",
      "Hosts",
      "Requirements",
      "DefaultSettings",
      "Permissions",
      "VersionOverrides",
    ]);
  });

  test("of the overrides", () => {
    expectOrder(overrides, ["Hosts", "Resources"]);
    expectOrder(host, ["Runtimes", "AllFormFactors", "DesktopFormFactor"]);
    expectOrder(forms, ["GetStarted", "FunctionFile", "ExtensionPoint"]);
    const functions = host.only("AllFormFactors").only("ExtensionPoint");
    expectOrder(functions, ["Script", "Page", "Metadata", "Namespace"]);
    expectOrder(resources, ["bt:Images", "bt:Urls", "bt:ShortStrings", "bt:LongStrings"]);
    for (const control of forms.all("Control")) expectOrder(control, ["Label", "Supertip", "Icon", "Action"]);
  });
});

describe("shared runtime", () => {
  test("is required, long-lived, and one resid serves runtime, page, function file and pane", () => {
    const [required] = root.only("Requirements").all("Set");
    expect(required?.attributes).toMatchObject({ Name: "SharedRuntime", MinVersion: "1.1" });
    const runtime = host.only("Runtimes").only("Runtime");
    expect(attribute(runtime, "lifetime")).toBe("long");
    const page = host.only("AllFormFactors").only("ExtensionPoint").only("Page").only("SourceLocation");
    const panes = forms.all("Action").map((action) => action.only("SourceLocation"));
    const resids = [runtime, page, forms.only("FunctionFile"), ...panes].map((node) =>
      attribute(node, "resid"),
    );
    expect(panes.length).toBeGreaterThan(0);
    expect(new Set(resids).size).toBe(1);
  });

  test("no action carries a TaskpaneId", () => {
    expect(root.all("TaskpaneId")).toEqual([]);
  });
});

describe("resources", () => {
  test("each is defined once and used, and every one used is defined", () => {
    const defined = definitions.map((node) => attribute(node, "id"));
    const used = overrides.everything().flatMap(({ attributes }) => attributes.resid ?? []);
    expect(new Set(defined).size).toBe(defined.length);
    expect(new Set(used)).toEqual(new Set(defined));
    for (const id of defined) expect(id.length).toBeLessThanOrEqual(32);
  });

  test("strings are no longer than Office allows: 125 characters short, 250 long", () => {
    const lengths = (list: string) =>
      resources.only(list).children.map((node) => attribute(node, "DefaultValue").length);
    expect(Math.max(...lengths("bt:ShortStrings"))).toBeLessThanOrEqual(125);
    expect(Math.max(...lengths("bt:LongStrings"))).toBeLessThanOrEqual(250);
    expect(attribute(root.only("Description"), "DefaultValue").length).toBeLessThanOrEqual(250);
  });

  test("the namespace is the one that the functions are declared in, 32 characters at most", () => {
    const id = attribute(host.only("AllFormFactors").only("ExtensionPoint").only("Namespace"), "resid");
    const namespace = definitions.find((node) => node.attributes.id === id);
    expect(namespace?.attributes.DefaultValue).toBe(NAMESPACE);
    expect(NAMESPACE.length).toBeLessThanOrEqual(32);
  });

  test("the version is that of package.json in four parts", () => {
    expect(textOf(root.only("Version"))).toBe(`${version}.0`);
  });
});

describe("addresses", () => {
  const pages = inject("pages");

  function addresses(node: Node): string[] {
    return node.everything().flatMap(({ attributes }) => {
      const value = attributes.DefaultValue ?? "";
      return /^https?:/.test(value) ? [value] : [];
    });
  }

  test("are all https and on the development server", () => {
    expect(addresses(root).length).toBeGreaterThan(8);
    for (const address of addresses(root)) expect(address.startsWith(`${DEVELOPMENT_HOST}/`)).toBe(true);
  });

  test("lead to files that the build makes", () => {
    for (const address of addresses(root)) {
      const path = new URL(address).pathname;
      expect(readFileSync(join(pages, path)).length, path).toBeGreaterThan(100);
    }
  });

  test("move to another host together; the built manifest has none of development left", async () => {
    const moved = await parseXml(manifestFor(source, "https://forge.example/blades"));
    const paths = addresses(root).map((address) => address.replace(DEVELOPMENT_HOST, ""));
    expect(addresses(moved)).toEqual(paths.map((path) => `https://forge.example/blades${path}`));
    const built = readFileSync(join(pages, "manifest.xml"), "utf8");
    expect(built).not.toContain("localhost:3000/");
    expect(addresses(await parseXml(built)).every((address) => address.startsWith(PLACEHOLDER_HOST))).toBe(
      true,
    );
  });

  test("a host is https and without query; a slash at the end is taken off", () => {
    expect(productionHost("https://forge.example/blades/")).toBe("https://forge.example/blades");
    expect(productionHost(undefined)).toBe(PLACEHOLDER_HOST);
    for (const wrong of ["http://forge.example", "forge.example", "https://forge.example/?a=1"]) {
      expect(() => productionHost(wrong)).toThrow(/https address/);
    }
  });
});

describe("icons", () => {
  /** Width and height stand in the first chunk of a PNG file: ISO/IEC 15948, 11.2.2. */
  function pngSize(path: string): [number, number] {
    const bytes = readFileSync(path);
    expect(bytes.subarray(1, 4).toString()).toBe("PNG");
    return [bytes.readUInt32BE(16), bytes.readUInt32BE(20)];
  }

  test.each([16, 32, 64, 80])("of %i pixels", (size) => {
    expect(pngSize(`assets/icon-${size}.png`)).toEqual([size, size]);
  });

  test("the sizes asked for in the ribbon are those of the files", () => {
    const images = forms.all("bt:Image").map(({ attributes }) => [attributes.size, attributes.resid]);
    const files = new Map(
      definitions.map(({ attributes }) => [attributes.id, attributes.DefaultValue ?? ""]),
    );
    expect(images.length).toBe(6);
    for (const [size, resid] of images) expect(files.get(resid)).toMatch(new RegExp(`icon-${size}\\.png$`));
  });
});
