import { join } from "node:path";
import ts from "typescript";

/** What a module shows, read by the compiler. */

export const ROOT = new URL("../..", import.meta.url).pathname;

const config = ts.getParsedCommandLineOfConfigFile(join(ROOT, "src/core/tsconfig.json"), undefined, {
  ...ts.sys,
  onUnRecoverableConfigFileDiagnostic: () => undefined,
});

export interface Entry {
  readonly checker: ts.TypeChecker;
  /** Every symbol that is shown, behind its aliases. */
  readonly shown: ReadonlyMap<string, ts.Symbol>;
}

/** A program over the entries of the library. */
export function readEntries(paths: readonly string[]): readonly Entry[] {
  const files = paths.map((path) => join(ROOT, path));
  const program = ts.createProgram(files, config?.options ?? {});
  const checker = program.getTypeChecker();
  return files.map((file) => {
    const entry = checker.getSymbolAtLocation(program.getSourceFile(file) as ts.SourceFile) as ts.Symbol;
    const shown = checker.getExportsOfModule(entry).map((symbol) => {
      const isAlias = (symbol.flags & ts.SymbolFlags.Alias) !== 0;
      return [symbol.name, isAlias ? checker.getAliasedSymbol(symbol) : symbol] as const;
    });
    return { checker, shown: new Map(shown) };
  });
}

/** The parts of a declaration that a declaration file prints: not the body of a function, nor what is private. */
function printed(node: ts.Node): readonly ts.Node[] {
  if (ts.isFunctionLike(node)) {
    const inferred = node.type === undefined ? [] : [node.type];
    return [...(node.typeParameters ?? []), ...node.parameters, ...inferred];
  }
  if (ts.isVariableDeclaration(node)) return node.type === undefined ? [] : [node.type];
  const parts: ts.Node[] = [];
  ts.forEachChild(node, (child) => {
    parts.push(child);
  });
  return parts;
}

function namedIn(node: ts.Node): ts.Node | undefined {
  if (ts.isTypeReferenceNode(node)) return node.typeName;
  return ts.isExpressionWithTypeArguments(node) ? node.expression : undefined;
}

function ownDeclarations({ declarations = [] }: ts.Symbol, folder: string): ts.Declaration[] {
  return declarations.filter(
    (each) =>
      each.getSourceFile().fileName.startsWith(join(ROOT, folder)) && !ts.isTypeParameterDeclaration(each),
  );
}

/** Types of our own that what is shown refers to, by name and file, and that are not shown. */
export function unshownTypes({ checker, shown }: Entry, folder: string): string[] {
  const known = new Set(shown.values());
  const seen = new Set<ts.Symbol>();
  const missing = new Set<string>();
  const visit = (node: ts.Node): void => {
    const name = namedIn(node);
    const found = name && checker.getSymbolAtLocation(name);
    if (found) meet(found.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(found) : found);
    for (const part of printed(node)) visit(part);
  };
  const meet = (symbol: ts.Symbol): void => {
    if (seen.has(symbol)) return;
    seen.add(symbol);
    for (const declaration of ownDeclarations(symbol, folder)) {
      const isExported = (ts.getCombinedModifierFlags(declaration) & ts.ModifierFlags.Export) !== 0;
      if (isExported && !known.has(symbol))
        missing.add(`${symbol.name} of ${declaration.getSourceFile().fileName.slice(ROOT.length)}`);
      visit(declaration);
    }
  };
  for (const symbol of shown.values()) meet(symbol);
  return [...missing].sort();
}
