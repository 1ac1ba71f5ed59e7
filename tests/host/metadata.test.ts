import { readdirSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { describe, expect, inject, test } from "vitest";
import { catalogue, NAMESPACE } from "../../src/functions/catalogue";
import { Dispatcher } from "./dispatcher";
import { MACRO_NAMES } from "./macro-names";

interface FunctionEntry {
  readonly id: string;
  readonly name: string;
  readonly description: string;
  readonly helpUrl: string;
  readonly parameters: readonly { readonly name: string; readonly description: string }[];
  readonly options?: unknown;
}

interface FunctionsFile {
  readonly allowCustomDataForDataTypeAny: boolean;
  readonly functions: readonly FunctionEntry[];
}

const require = createRequire(import.meta.url);
const { schemaFaults }: { schemaFaults: (metadata: object, namespace: string) => string[] } =
  require("../../manifest/function-metadata.cjs");

const pages = inject("pages");
const file: FunctionsFile = JSON.parse(readFileSync(join(pages, "functions.json"), "utf8"));
const ids = file.functions.map(({ id }) => id);

const BUILT_IN = "node_modules/@univerjs/engine-formula/lib/types/functions";

/** Built-in worksheet functions, as the type declarations of the formula engine in use list them. */
function builtInNames(): string[] {
  const lists = readdirSync(BUILT_IN, { recursive: true, encoding: "utf8" });
  const texts = lists
    .filter((name) => name.endsWith("function-names.d.ts"))
    .map((name) => readFileSync(join(BUILT_IN, name), "utf8"));
  return texts.flatMap((text) => text.match(/\b[A-Z][A-Z0-9_.]*(?= = ")/g) ?? []);
}

describe("functions.json", () => {
  test("is valid by definition extensionCustomFunctions of the published schema v1.29", () => {
    expect(schemaFaults(file, NAMESPACE)).toEqual([]);
  });

  test("is refused by the schema where it is wrong", () => {
    const [first] = file.functions;
    expect(schemaFaults({ ...file, functions: [{ ...first, name: "A" }] }, NAMESPACE)).not.toEqual([]);
    expect(schemaFaults({ ...file, allowErrorForDataTypeAny: true }, NAMESPACE)).not.toEqual([]);
    expect(schemaFaults(file, "B".repeat(33))).not.toEqual([]);
  });

  test("lists every declared function once and nothing else", () => {
    expect([...ids].sort()).toEqual(catalogue.map(({ name }) => name).sort());
    expect(new Set(ids.map((id) => id.toUpperCase())).size).toBe(ids.length);
  });

  test("the built bundle registers exactly these", () => {
    expect(new Dispatcher(pages).registered().sort()).toEqual([...ids].sort());
  });

  test("takes rich values and no others, and nothing volatile or streaming", () => {
    expect(file.allowCustomDataForDataTypeAny).toBe(true);
    expect(Object.keys(file).sort()).toEqual(["allowCustomDataForDataTypeAny", "functions"]);
    expect(file.functions.filter(({ options }) => options !== undefined)).toEqual([]);
  });

  test("describes every function and parameter", () => {
    for (const { id, description, parameters, helpUrl } of file.functions) {
      expect(description, id).toMatch(/\S.{10}/);
      expect(helpUrl, id).toMatch(new RegExp(`^https://.*/assets/help/${id}\\.html$`));
      for (const parameter of parameters)
        expect(parameter.description, `${id} ${parameter.name}`).toMatch(/\S.{5}/);
    }
  });
});

/** Rules for names: "Custom functions naming guidelines" of the Office add-in documentation. */
describe("names", () => {
  test("start with a letter and hold letters, digits and underscores, at least three", () => {
    for (const name of ids) expect(name).toMatch(/^[A-Z][A-Z0-9_]{2,63}$/);
  });

  test("are no cell addresses of either style", () => {
    for (const name of ids) {
      expect(name).not.toMatch(/^[A-Z]{1,3}\d+$/);
      expect(name).not.toMatch(/^R\d*C\d*$/);
    }
  });

  test("are no built-in function and no Excel 4.0 macro name", () => {
    const builtIn = builtInNames();
    expect(builtIn.length).toBeGreaterThan(450);
    expect(builtIn).toContain("XLOOKUP");
    const taken = new Set([...builtIn, ...MACRO_NAMES]);
    expect(ids.filter((name) => taken.has(name))).toEqual([]);
  });
});
