import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import ts from "typescript";

/** Reads what the library shows, and which worksheet functions ask it, from the sources as they are written. */

export interface Shown {
  readonly name: string;
  /** Folder of core. */
  readonly topic: string;
  /** With its arguments and their types; a constant by its name alone. */
  readonly signature: string;
  /** First sentence of its docstring. */
  readonly line: string;
}

function parsed(path: string): ts.SourceFile {
  return ts.createSourceFile(path, readFileSync(path, "utf8"), ts.ScriptTarget.Latest, true);
}

/** Names that an index exports, without types, and the files they come from. */
function exportedNames(index: string): [name: string, file: string][] {
  return parsed(index).statements.flatMap((statement) => {
    if (!ts.isExportDeclaration(statement) || statement.isTypeOnly || !statement.exportClause) return [];
    if (!ts.isNamedExports(statement.exportClause) || statement.moduleSpecifier === undefined) return [];
    const from = (statement.moduleSpecifier as ts.StringLiteral).text;
    const file = join(index, "..", `${from}.ts`);
    return statement.exportClause.elements
      .filter(({ isTypeOnly }) => !isTypeOnly)
      .map(({ name }): [string, string] => [name.text, file]);
  });
}

const oneLine = (text: string): string =>
  text
    .replace(/\s+/g, " ")
    .replace(/,? ([)}])/g, "$1")
    .trim();

/** The first sentence of a docstring, its links as the names they lead to. */
function firstSentence(statement: ts.Node): string {
  const comment = ts.getJSDocCommentsAndTags(statement).find(ts.isJSDoc);
  const text = oneLine(ts.getTextOfJSDocComment(comment?.comment) ?? "").replace(/\{@link (\w+)\}/g, "$1");
  return /^.*?[.](?= [A-Z]|$)/.exec(text)?.[0] ?? text;
}

/** A parameter as a caller sees it: fields that are taken apart as their record, a named default as left out. */
function parameterText(parameter: ts.ParameterDeclaration): string {
  const { name, type, initializer } = parameter;
  const isPattern = !ts.isIdentifier(name);
  if (!isPattern && (initializer === undefined || !ts.isIdentifier(initializer)))
    return oneLine(parameter.getText());
  const typed = type === undefined ? "number" : oneLine(type.getText());
  const called = isPattern ? typed.charAt(0).toLowerCase() + typed.slice(1) : name.text;
  return `${called}${initializer === undefined ? "" : "?"}: ${typed}`;
}

function signatureOf(statement: ts.Statement, name: string): string | undefined {
  if (ts.isFunctionDeclaration(statement) && statement.name?.text === name) {
    const given = statement.parameters.map(parameterText).join(", ");
    const answer = statement.type === undefined ? "" : `: ${oneLine(statement.type.getText())}`;
    return `${name}(${given})${answer}`;
  }
  if (!ts.isVariableStatement(statement)) return undefined;
  const declared = statement.declarationList.declarations.find((each) => each.name.getText() === name);
  if (declared === undefined) return undefined;
  const isFinder = declared.initializer?.getText().startsWith("wordFinder") === true;
  return isFinder ? `${name}(word)` : name;
}

/** Everything that a topic of core shows, types left out. */
export function shownBy(topic: string): Shown[] {
  return exportedNames(`src/core/${topic}/index.ts`).flatMap(([name, file]) =>
    parsed(file).statements.flatMap((statement) => {
      const signature = signatureOf(statement, name);
      return signature === undefined ? [] : [{ name, topic, signature, line: firstSentence(statement) }];
    }),
  );
}

/** What stands at the top of a file, by its name. */
function topLevel(file: ts.SourceFile): Map<string, ts.Node> {
  const declared = file.statements.flatMap((statement): [string, ts.Node][] => {
    if (ts.isFunctionDeclaration(statement)) return [[statement.name?.text ?? "", statement]];
    if (!ts.isVariableStatement(statement)) return [];
    return statement.declarationList.declarations.map((each) => [each.name.getText(), each]);
  });
  return new Map(declared);
}

/** Names that a top-level name leads to within its file. */
function reached(file: ts.SourceFile, from: string): Set<string> {
  const local = topLevel(file);
  const seen = new Set<string>([from]);
  const visit = (node: ts.Node): void => {
    if (ts.isIdentifier(node)) seen.add(node.text);
    ts.forEachChild(node, visit);
  };
  for (const name of seen) {
    const node = local.get(name);
    if (node !== undefined) visit(node);
  }
  return seen;
}

function coreBindings(statement: ts.Statement): readonly ts.ImportSpecifier[] {
  if (!ts.isImportDeclaration(statement)) return [];
  const bindings = statement.importClause?.namedBindings;
  if (!/\/core\//.test((statement.moduleSpecifier as ts.StringLiteral).text) || !bindings) return [];
  return ts.isNamedImports(bindings) ? bindings.elements : [];
}

/** Names that a file imports from core; what runs in parts goes by the name of what runs at once. */
function importedFromCore(file: ts.SourceFile): Map<string, string> {
  const names = file.statements
    .flatMap(coreBindings)
    .filter(({ isTypeOnly }) => !isTypeOnly)
    .map(({ name }): [string, string] => [name.text, name.text.replace(/InParts$/, "")]);
  return new Map(names);
}

function declaredIn(path: string): string[] {
  return [...readFileSync(path, "utf8").matchAll(/^export const ([A-Z_0-9]+) = \w+Function\(/gm)].map(
    ([, name = ""]) => name,
  );
}

/** The names of core that each worksheet function of a topic asks, by the name of the function. */
export function askedBy(topic: string): Map<string, ReadonlySet<string>> {
  const folder = `src/functions/${topic}`;
  const asked = new Map<string, ReadonlySet<string>>();
  if (!existsSync(folder)) return asked;
  for (const name of readdirSync(folder).sort()) {
    const path = join(folder, name);
    const declared = declaredIn(path);
    if (declared.length === 0) continue;
    const file = parsed(path);
    const imported = importedFromCore(file);
    for (const each of declared) {
      const names = [...reached(file, each)].flatMap((found) => imported.get(found) ?? []);
      asked.set(each, new Set(names));
    }
  }
  return asked;
}
