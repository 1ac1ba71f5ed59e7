import ts from "typescript";

/** Calls that run a text when it is their first argument. */
const TIMERS = new Set(["setTimeout", "setInterval", "setImmediate", "execScript"]);
/** Properties and methods through which a text becomes part of a page. */
const MARKUP = new Set(["innerHTML", "outerHTML", "insertAdjacentHTML", "createContextualFragment"]);

function nameOf(node: ts.Expression): string {
  if (ts.isIdentifier(node)) return node.text;
  return ts.isPropertyAccessExpression(node) ? node.name.text : "";
}

function isText(node: ts.Expression | undefined): boolean {
  return node !== undefined && (ts.isStringLiteralLike(node) || ts.isTemplateExpression(node));
}

/** Old libraries find the global object so where all else fails; in a page with a policy it is refused and never needed. */
export const GLOBAL_OBJECT = "the global object by a text";

function functionFinding({ arguments: given }: ts.CallExpression | ts.NewExpression): string {
  const [only] = given ?? [];
  const isGlobal = given?.length === 1 && only !== undefined && ts.isStringLiteralLike(only);
  return isGlobal && only.text === "return this" ? GLOBAL_OBJECT : "a function made of text";
}

function callFinding(node: ts.CallExpression | ts.NewExpression): string | undefined {
  const name = nameOf(node.expression);
  const isGlobal = ts.isIdentifier(node.expression);
  if (isGlobal && name === "eval") return "eval";
  if (name === "Function" && (node.arguments?.length ?? 0) > 0) return functionFinding(node);
  if (TIMERS.has(name) && isText(node.arguments?.[0])) return `${name} with a text`;
  if (name === "write" && /\bdocument\.write/.test(node.expression.getText())) return "document.write";
  return undefined;
}

function isImport(node: ts.Node): node is ts.CallExpression {
  return ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword;
}

/** What writes markup: an assignment to `innerHTML`, a call of `insertAdjacentHTML`. */
function markupFinding(node: ts.Node): string | undefined {
  if (ts.isCallExpression(node) && MARKUP.has(nameOf(node.expression))) return nameOf(node.expression);
  const isAssignment = ts.isBinaryExpression(node) && node.operatorToken.kind === ts.SyntaxKind.EqualsToken;
  return isAssignment && MARKUP.has(nameOf(node.left)) ? nameOf(node.left) : undefined;
}

function finding(node: ts.Node): string | undefined {
  if (isImport(node))
    return isText(node.arguments[0]) ? undefined : "import of an address that is worked out";
  const isCall = ts.isCallExpression(node) || ts.isNewExpression(node);
  return (isCall ? callFinding(node) : undefined) ?? markupFinding(node);
}

/**
 * Places in a script at which text is run as code or becomes markup.
 *
 * @param file - Name for the report; its ending tells JavaScript from TypeScript.
 */
export function dynamicCode(file: string, text: string): string[] {
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true);
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    const what = finding(node);
    if (what !== undefined) {
      const { line } = source.getLineAndCharacterOfPosition(node.getStart());
      found.push(`${file}:${line + 1}: ${what}`);
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}
