import ts from "typescript";

/**
 * Methods and functions that Safari 15.4 does not have, with the version that brought them. From memory of the release
 * notes of WebKit; the oldest WebKit that Excel on a Mac runs the pane in is taken to be 15.4.
 */
const METHODS: Readonly<Record<string, string>> = {
  toSorted: "16",
  toReversed: "16",
  toSpliced: "16",
  fromAsync: "16.4",
  groupBy: "17.4",
  withResolvers: "17.4",
  canParse: "17",
  showPopover: "17",
  isWellFormed: "16.4",
  toWellFormed: "16.4",
  isSubsetOf: "17",
  isSupersetOf: "17",
  symmetricDifference: "17",
  transferToFixedLength: "17.4",
};
/** Static members, where the name alone says too little. */
const STATICS: Readonly<Record<string, string>> = {
  "AbortSignal.timeout": "16",
  "AbortSignal.any": "17.4",
  "Iterator.from": "18.4",
  "RegExp.escape": "18.2",
  "Promise.try": "18.2",
};
const CONSTRUCTORS: Readonly<Record<string, string>> = {
  CompressionStream: "16.4",
  DecompressionStream: "16.4",
  OffscreenCanvas: "16.4",
};

/** What a pattern holds that its maker throws at: a script with such a literal does not even begin. */
function patternFault(source: string, flags: string): string | undefined {
  if (/\(\?<[=!]/.test(source)) return "a look behind in a pattern (16.4)";
  return flags.includes("v") ? "the flag v of a pattern (17)" : undefined;
}

function accessFault(node: ts.PropertyAccessExpression): string | undefined {
  const name = node.name.text;
  const isStatic = ts.isIdentifier(node.expression) ? STATICS[`${node.expression.text}.${name}`] : undefined;
  const since = isStatic ?? (Object.hasOwn(METHODS, name) ? METHODS[name] : undefined);
  // `a.b?.()` is asked for before it is used.
  const isAsked = ts.isCallExpression(node.parent) && node.parent.questionDotToken !== undefined;
  return since === undefined || isAsked ? undefined : `${name} (${since})`;
}

function faultOf(node: ts.Node): string | undefined {
  if (ts.isClassStaticBlockDeclaration(node)) return "a static block of a class (16.4)";
  if (ts.isRegularExpressionLiteral(node)) {
    const end = node.text.lastIndexOf("/");
    return patternFault(node.text.slice(1, end), node.text.slice(end + 1));
  }
  if (ts.isStringLiteralLike(node) || ts.isTemplateHead(node) || ts.isTemplateMiddleOrTemplateTail(node))
    return patternFault(node.text, "");
  if (ts.isPropertyAccessExpression(node)) return accessFault(node);
  if (
    ts.isNewExpression(node) &&
    ts.isIdentifier(node.expression) &&
    Object.hasOwn(CONSTRUCTORS, node.expression.text)
  )
    return `${node.expression.text} (${CONSTRUCTORS[node.expression.text]})`;
  return undefined;
}

/** What a script uses that came to Safari after 15.4, each with the version. */
export function newerThanSafari154(file: string, code: string): string[] {
  const source = ts.createSourceFile(file, code, ts.ScriptTarget.Latest, true);
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    const fault = faultOf(node);
    if (fault !== undefined) found.push(`${file}: ${fault}`);
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}
