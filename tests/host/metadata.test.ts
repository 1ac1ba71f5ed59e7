import { readdirSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { describe, expect, inject, test } from "vitest";
import { catalogue } from "../../src/functions/catalogue";
import { Dispatcher } from "./dispatcher";
import { MACRO_NAMES } from "./macro-names";

interface ParameterEntry {
  readonly name: string;
  readonly description: string;
  readonly type: string;
  readonly dimensionality: string;
  readonly optional?: boolean;
  readonly customEnumId?: string;
}

interface FunctionEntry {
  readonly id: string;
  readonly name: string;
  readonly description: string;
  readonly helpUrl: string;
  readonly parameters: readonly ParameterEntry[];
  readonly options?: unknown;
}

interface FunctionsFile {
  readonly allowCustomDataForDataTypeAny: boolean;
  readonly allowErrorForDataTypeAny: boolean;
  readonly enums: readonly {
    readonly id: string;
    readonly values: readonly { readonly stringValue: string }[];
  }[];
  readonly functions: readonly FunctionEntry[];
}

const require = createRequire(import.meta.url);
const { schemaFaults }: { schemaFaults: (metadata: object) => string[] } =
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
  test("is valid by the schema of functions, with the keys that a file of its own has", () => {
    expect(schemaFaults(file)).toEqual([]);
  });

  test("is refused by the schema where it is wrong", () => {
    const [first] = file.functions;
    const wrong = (changes: object) =>
      schemaFaults({ ...file, functions: [{ ...first, ...changes }, ...file.functions] });
    expect(wrong({ name: "A" })).not.toEqual([]);
    expect(wrong({ options: { cancelable: "yes" } })).not.toEqual([]);
    expect(wrong({ options: { sometimes: true } })).not.toEqual([]);
    expect(wrong({ cancelable: true })).not.toEqual([]);
    expect(wrong({ parameters: [{ name: "x", type: "any", dimensionality: "cube" }] })).not.toEqual([]);
    expect(schemaFaults({ ...file, allowErrorForDataTypeAny: "yes" })).not.toEqual([]);
    expect(schemaFaults({ ...file, allowErrors: true })).not.toEqual([]);
    expect(schemaFaults({ ...file, enums: [] }).join()).toMatch(/used and not defined/);
    expect(
      schemaFaults({ ...file, enums: [...file.enums, { ...file.enums[0], id: "UNUSED" }] }).join(),
    ).toMatch(/used by no parameter/);
  });

  test("lists every declared function once and nothing else", () => {
    expect([...ids].sort()).toEqual(catalogue.map(({ name }) => name).sort());
    expect(new Set(ids.map((id) => id.toUpperCase())).size).toBe(ids.length);
  });

  test("the built bundle registers exactly these", () => {
    expect(new Dispatcher(pages).registered().sort()).toEqual([...ids].sort());
  });

  test("takes rich values and error values, so that one #N/A in a column does not keep the call from being made", () => {
    expect(file.allowCustomDataForDataTypeAny).toBe(true);
    expect(file.allowErrorForDataTypeAny).toBe(true);
    expect(Object.keys(file)).toEqual([
      "allowCustomDataForDataTypeAny",
      "allowErrorForDataTypeAny",
      "enums",
      "functions",
    ]);
  });

  test("nothing is volatile or streaming; only what takes long on a column may be called off", () => {
    const marked = file.functions.filter(({ options }) => options !== undefined);
    expect(marked.map(({ id }) => id)).toEqual(
      catalogue.filter(({ takesLong }) => takesLong).map(({ name }) => name),
    );
    for (const { options } of marked) expect(options).toEqual({ cancelable: true });
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

describe("lists of words", () => {
  const lists = new Map(
    file.enums.map(({ id, values }) => [id, values.map(({ stringValue }) => stringValue)]),
  );
  const entry = (id: string) => file.functions.find((fn) => fn.id === id);

  test("stand for every kind of word that can be counted", () => {
    const kinds = [
      ["QUENCH", "fast oil"],
      ["GRIND", "lenticular"],
      ["HARDNESS_SCALE", "HV"],
      ["USE", "European sword sharp"],
      ["BOUND", "low"],
      ["MODEL", "average"],
      ["INSPECTION_LEVEL", "II"],
      ["CLASS_OF_STEEL", undefined],
    ] as const;
    for (const [id, word] of kinds) {
      expect(lists.get(id)?.length, id).toBeGreaterThan(1);
      if (word !== undefined) expect(lists.get(id), id).toContain(word);
    }
  });

  // The words come from where the argument itself looks them up: each must be read, and nothing else may be offered.
  test("hold nothing that the argument refuses", () => {
    for (const fn of catalogue) {
      Object.values(fn.parameters).forEach((parameter, at) => {
        const list = entry(fn.name)?.parameters[at]?.customEnumId;
        if (list === undefined) return;
        for (const word of lists.get(list) ?? [])
          expect(() => parameter.read(word), `${fn.name} ${word}`).not.toThrow();
      });
    }
  });

  test("a text that serves a whole call is a single text, every other argument takes a range", () => {
    const given = file.functions.flatMap(({ id, parameters }) =>
      parameters.map((parameter) => ({ id, ...parameter })),
    );
    const single = given.filter(({ dimensionality }) => dimensionality === "scalar");
    expect(single.map(({ id, name }) => `${id} ${name}`)).toContain("STEELS family");
    expect(new Set(single.map(({ type }) => type))).toEqual(new Set(["string"]));
    const shapes = single.map(({ id }) => catalogue.find(({ name }) => name === id)?.shape);
    expect(new Set(shapes)).toEqual(new Set(["table"]));
    const wide = given.filter(({ dimensionality }) => dimensionality === "matrix");
    expect(new Set(wide.map(({ type }) => type))).toEqual(new Set(["any"]));
    expect(single.length + wide.length).toBe(given.length);
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
