import { readFileSync } from "node:fs";
import { join, relative } from "node:path";
import ts from "typescript";
import { describe, expect, test } from "vitest";

// Every function that the library shows says what its figures are: unit, limits, error and source. House rule.

const ROOT = new URL("../..", import.meta.url).pathname;
const CORE = join(ROOT, "src/core");
const ENTRY = join(CORE, "index.ts");
const FUNCTIONS_ENTRY = join(ROOT, "src/functions/index.ts");

/** Records that a function hands on: their own fields say the unit. */
const RECORDS = new Set([
  "Steel",
  "Grade",
  "Use",
  "Grind",
  "QuenchMedium",
  "Scale",
  "Worded",
  "ThicknessRule",
]);

const config = ts.getParsedCommandLineOfConfigFile(join(CORE, "tsconfig.json"), undefined, {
  ...ts.sys,
  onUnRecoverableConfigFileDiagnostic: () => undefined,
});
const program = ts.createProgram([ENTRY, FUNCTIONS_ENTRY], config?.options ?? {});
const checker = program.getTypeChecker();

function holdsFigures(type: ts.Type, depth = 0): boolean {
  if (type.flags & ts.TypeFlags.NumberLike) return true;
  if (type.isUnionOrIntersection()) return type.types.some((part) => holdsFigures(part, depth));
  if (RECORDS.has((type.aliasSymbol ?? type.symbol)?.name ?? "") || !(type.flags & ts.TypeFlags.Object))
    return false;
  const element = type.getNumberIndexType();
  if (element !== undefined) return holdsFigures(element, depth + 1);
  return (
    depth < 2 &&
    type.getProperties().some((property) => holdsFigures(checker.getTypeOfSymbol(property), depth + 1))
  );
}

interface Shown {
  readonly name: string;
  readonly doc: string;
  readonly figures: boolean;
  readonly parameters: readonly string[];
}

function shown(named: ts.Symbol): Shown[] {
  const declaration = named.declarations?.[0];
  if (declaration === undefined || !ts.isFunctionDeclaration(declaration)) return [];
  const signature = checker.getSignatureFromDeclaration(declaration);
  if (signature === undefined) return [];
  const types = signature.getParameters().map((parameter) => checker.getTypeOfSymbol(parameter));
  const text = declaration.getFullText();
  return [
    {
      name: `${relative(CORE, declaration.getSourceFile().fileName)} ${named.name}`,
      doc: text.slice(text.lastIndexOf("/**", text.indexOf("export")), text.indexOf("export")),
      figures: [...types, signature.getReturnType()].some((type) => holdsFigures(type)),
      parameters: declaration.parameters
        .map(({ name }) => name)
        .filter(ts.isIdentifier)
        .map(({ text: parameter }) => parameter),
    },
  ];
}

function exportsOf(file: string): readonly ts.Symbol[] {
  const entry = checker.getSymbolAtLocation(program.getSourceFile(file) as ts.SourceFile) as ts.Symbol;
  return checker
    .getExportsOfModule(entry)
    .map((symbol) => (symbol.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(symbol) : symbol));
}

const functions = exportsOf(ENTRY).flatMap(shown);
const ofFigures = functions.filter(({ figures }) => figures);

const relations = new Set(
  program
    .getSourceFiles()
    .filter(({ fileName }) => fileName.startsWith(CORE))
    .flatMap(({ fileName }) => [
      ...readFileSync(fileName, "utf8").matchAll(
        /^(?:export )?const ([A-Z_0-9]+)(?:: Relation)? = (?:relation\()?/gm,
      ),
    ])
    .map(([, name = ""]) => name),
);

const without = (accepts: (each: Shown) => boolean, list = ofFigures) =>
  list.filter((each) => !accepts(each)).map(({ name }) => name);

describe("docstrings of the functions that the library shows", () => {
  test("are read: most of them give or take figures", () => {
    expect(functions.length).toBeGreaterThan(100);
    expect(ofFigures.length).toBeGreaterThan(90);
  });

  test("state a unit in square brackets, [-] for a bare share, or an amount of money", () => {
    expect(without(({ doc }) => /\[[^\]]+\]|[Aa]mount/.test(doc.replace(/\{@link[^}]*\}/g, "")))).toEqual([]);
  });

  test("state what is refused, or that nothing is", () => {
    expect(without(({ doc }) => /@throws|Limits: /.test(doc))).toEqual([]);
  });

  test("name the relation behind the figure, or state error and source", () => {
    const says = ({ doc }: Shown) =>
      /Error and source: /.test(doc) || (/Error: /.test(doc) && /Source: /.test(doc));
    expect(without(says)).toEqual([]);
  });

  test("describe every argument by its name", () => {
    const describes = ({ doc, parameters }: Shown) =>
      parameters.every((parameter) => doc.includes(`@param ${parameter} - `));
    expect(without(describes)).toEqual([]);
  });

  test("link relations that there are", () => {
    const linked = functions.flatMap(({ doc }) =>
      [...doc.matchAll(/\{@link ([A-Z_0-9]+)\}/g)].map(([, name = ""]) => name),
    );
    expect(linked.length).toBeGreaterThan(60);
    expect(linked.filter((name) => !relations.has(name))).toEqual([]);
  });
});

/** Every field of the records of a file, with what is said of it. */
function fieldsIn(name: string) {
  const source = program.getSourceFile(join(CORE, name));
  if (source === undefined) throw new Error(`${name} is not part of core`);
  return source.statements.filter(ts.isInterfaceDeclaration).flatMap(({ members }) =>
    members.filter(ts.isPropertySignature).map((member) => ({
      name: member.name.getText(),
      doc: ts
        .getJSDocCommentsAndTags(member)
        .map((part) => part.getText())
        .join(" "),
      isFigure: /\bnumber\b|\bTypedTemper\b/.test(member.type?.getText() ?? ""),
    })),
  );
}

test("each field of a line of a run is described, a figure with its unit", () => {
  const fields = fieldsIn("run/line.ts");
  expect(fields.length).toBeGreaterThan(50);
  expect(fields.filter(({ doc }) => doc === "")).toEqual([]);
  const days = ["priceDate"];
  const bare = fields.filter(
    ({ isFigure, doc, name }) => isFigure && !days.includes(name) && !/\[[^\]]+\]/.test(doc),
  );
  expect(bare).toEqual([]);
});

/**
 * A number, in a list too, or as what a function of the record takes or gives. What may be a text as well is a cell or
 * a name.
 */
function isQuantity(type: ts.Type): boolean {
  if (type.flags & ts.TypeFlags.NumberLike || type.symbol?.name === "TypedTemper") return true;
  if (type.isUnion()) {
    const mayBeText = type.types.some(({ flags }) => flags & ts.TypeFlags.StringLike);
    return !mayBeText && type.types.some(isQuantity);
  }
  if (checker.isArrayType(type) || checker.isTupleType(type)) {
    return checker.getTypeArguments(type as ts.TypeReference).some(isQuantity);
  }
  return type
    .getCallSignatures()
    .some((call) =>
      [call.getReturnType(), ...call.getParameters().map((each) => checker.getTypeOfSymbol(each))].some(
        isQuantity,
      ),
    );
}

interface Field {
  readonly name: string;
  readonly doc: string;
  readonly isQuantity: boolean;
}

/** The fields of a record, those that it takes over from others included. */
function fieldsOf(record: ts.Symbol): Field[] {
  if (!(record.flags & (ts.SymbolFlags.Interface | ts.SymbolFlags.TypeAlias))) return [];
  const type = checker.getDeclaredTypeOfSymbol(record);
  return (type.isUnion() ? type.types : [type]).flatMap((part) =>
    part.getProperties().flatMap((property) => {
      const declaration = property.declarations?.find(ts.isPropertySignature);
      if (declaration === undefined || !declaration.getSourceFile().fileName.startsWith(join(ROOT, "src")))
        return [];
      const doc = ts.displayPartsToString(property.getDocumentationComment(checker));
      return [
        {
          name: `${relative(ROOT, declaration.getSourceFile().fileName)} ${record.name}.${property.name}`,
          doc,
          isQuantity: isQuantity(checker.getTypeOfSymbol(property)),
        },
      ];
    }),
  );
}

test("each quantity of a record that the library shows has its unit, [-] for a share or a count", () => {
  const fields = [ENTRY, FUNCTIONS_ENTRY].flatMap((file) => exportsOf(file).flatMap(fieldsOf));
  const quantities = fields.filter((field) => field.isQuantity);
  expect(quantities.length).toBeGreaterThan(400);
  expect(quantities.filter(({ doc }) => !/\[[^\]]+\]/.test(doc)).map(({ name }) => name)).toEqual([]);
});
