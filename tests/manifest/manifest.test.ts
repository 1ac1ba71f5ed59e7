import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { describe, expect, inject, test } from "vitest";
import { addresses, manifestFaults } from "./manifest-rules";
import { parseXml } from "./xml";

const require = createRequire(import.meta.url);
const {
  DEVELOPMENT,
  DEVELOPMENT_HOST,
  PLACEHOLDER_HOST,
  RELEASE,
  manifestFor,
  productionHost,
} = require("../../manifest/hosting.cjs");

const source = readFileSync("manifest/manifest.xml", "utf8");
const root = parseXml(source);
const overrides = root.only("VersionOverrides");
const forms = overrides.only("Hosts").only("Host").only("DesktopFormFactor");
const resources = overrides.only("Resources");
const definitions = ["bt:Images", "bt:Urls"].flatMap((list) => resources.only(list).children);

describe("rules", () => {
  test("hold for the manifest", () => {
    expect(manifestFaults(source)).toEqual([]);
  });

  test.each([
    [
      "order of elements",
      /(<Version>.*?<\/Version>)\s*(<ProviderName>.*?<\/ProviderName>)/,
      "$2$1",
      /another order/,
    ],
    [
      "an element that does not belong",
      "<DesktopFormFactor>",
      "<DesktopFormFactor><Nonsense/>",
      /Nonsense does not belong/,
    ],
    ["the shared runtime", 'Name="SharedRuntime"', 'Name="ExcelApi"', /SharedRuntime is not asked for/],
    ["a long-lived runtime", 'lifetime="long"', 'lifetime="short"', /lifetime is not long/],
    ["one page for all", /(<FunctionFile resid=")[^"]+/, "$1Icon.16", /pane differ/],
    ["a button without code", "<FunctionName>newPlan", "<FunctionName>oldPlan", /no code is called oldPlan/],
    ["a resource that is used", /resid="[^"]*16"/, 'resid="Nowhere"', /Nowhere is used and not defined/],
    [
      "short strings",
      /(<bt:ShortStrings>\s*<bt:String [^>]*DefaultValue=")/,
      `$1${"x".repeat(126)}`,
      /125 are allowed/,
    ],
    [
      "the sets of errors",
      'Name="CustomFunctionsRuntime" MinVersion="1.3"',
      'Name="CustomFunctionsRuntime" MinVersion="1.1"',
      /CustomFunctionsRuntime 1\.1, not 1\.3/,
    ],
    ["the namespace", 'DefaultValue="BLADEDEV"', 'DefaultValue="OTHER"', /namespace is not BLADEDEV/],
    ["the Id", /<Id>[^<]+/, "<Id>00000000-0000-0000-0000-000000000000", /Id is neither/],
    ["the version", /<Version>[^<]+/, "<Version>9.9.9.9", /version is 9\.9\.9\.9/],
    ["secure addresses", "https://localhost", "http://localhost", /is not https/],
    ["one host", "https://localhost:3000/", "https://elsewhere.example/", /2 hosts/],
  ])("see a fault in %s", (_, from, to, fault) => {
    const wrong = source.replace(from, to);
    expect(wrong).not.toBe(source);
    expect(manifestFaults(wrong).join("\n")).toMatch(fault);
  });

  test("a document that is not well-formed is refused", () => {
    expect(() => manifestFaults(source.replace("</Hosts>", ""))).toThrow();
  });
});

describe("addresses", () => {
  const pages = inject("pages");

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

  test("move to another host together; the built manifest has none of development left", () => {
    const moved = parseXml(manifestFor(source, "https://forge.example/blades"));
    const paths = addresses(root).map((address) => address.replace(DEVELOPMENT_HOST, ""));
    expect(addresses(moved)).toEqual(paths.map((path) => `https://forge.example/blades${path}`));
    const built = readFileSync(join(pages, "manifest.xml"), "utf8");
    expect(built).not.toContain("localhost:3000/");
    expect(addresses(parseXml(built)).every((address) => address.startsWith(PLACEHOLDER_HOST))).toBe(true);
  });

  test("a host is https and without query; a slash at the end is taken off", () => {
    expect(productionHost("https://forge.example/blades/")).toBe("https://forge.example/blades");
    expect(productionHost(undefined)).toBe(PLACEHOLDER_HOST);
    for (const wrong of ["http://forge.example", "forge.example", "https://forge.example/?a=1"]) {
      expect(() => productionHost(wrong)).toThrow(/https address/);
    }
  });
});

describe("development beside release", () => {
  const built = parseXml(readFileSync(join(inject("pages"), "manifest.xml"), "utf8"));
  const namespace = (of: typeof root) =>
    of.all("bt:String").find(({ attributes }) => attributes.id === "Functions.Namespace")?.attributes
      .DefaultValue;

  test("two Ids and two namespaces, so that neither replaces the other", () => {
    expect([root.only("Id").text, namespace(root)]).toEqual([DEVELOPMENT.id, "BLADEDEV"]);
    expect([built.only("Id").text, namespace(built)]).toEqual([RELEASE.id, "BLADE"]);
    expect(DEVELOPMENT.id).not.toBe(RELEASE.id);
  });

  test("the built manifest follows the same rules and has no name of development left", () => {
    const xml = readFileSync(join(inject("pages"), "manifest.xml"), "utf8");
    expect(manifestFaults(xml)).toEqual([]);
    expect(xml.replace(/<!--.*?-->/s, "")).not.toMatch(/development|BLADEDEV|localhost/i);
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
    expect(images.length).toBe(3 * forms.all("Icon").length);
    expect(images.length).toBe(27);
    for (const [size, resid] of images) expect(files.get(resid)).toMatch(new RegExp(`icon-${size}\\.png$`));
  });
});
