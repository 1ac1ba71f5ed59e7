import { BoundedMap } from "../core/bounded-map";
import { ADDRESS, bareForm, NUMBER } from "./bare-form";
import { ownNamesTyped, storedForm } from "./own-names";
import type { Token } from "./pieces";
import { rewritten, tokensOf } from "./tokens";

/** In front of newer built-in functions, and of names that a formula gives itself. */
const MARKS = /^(?:_xlfn\.(?:_xlws\.)?)?(?:_xlpm\.)?/i;
const LOCAL = "_xlpm.";

/**
 * Built-in functions younger than the file format: a file marks them (MS-XLSX 2.2.2, "future functions"; the list is
 * from memory). What is missing here shows as #NAME? in Excel until it is entered again.
 */
const NEWER = new Set(
  `ACOT ACOTH ARABIC BASE BITAND BITLSHIFT BITOR BITRSHIFT BITXOR BYCOL BYROW CEILING.MATH CHOOSECOLS CHOOSEROWS
  COMBINA CONCAT COT COTH CSC CSCH DAYS DECIMAL DROP EXPAND FILTERXML FLOOR.MATH FORMULATEXT GAMMA GAUSS HSTACK IFNA
  IFS IMAGE ISFORMULA ISOWEEKNUM LAMBDA LET MAKEARRAY MAP MAXIFS MINIFS MUNIT NUMBERVALUE PDURATION PERMUTATIONA PHI
  RANDARRAY REDUCE RRI SCAN SEC SECH SEQUENCE SHEET SHEETS SORTBY SWITCH TAKE TEXTAFTER TEXTBEFORE TEXTJOIN TEXTSPLIT
  TOCOL TOROW UNICHAR UNICODE UNIQUE VSTACK WRAPCOLS WRAPROWS XLOOKUP XMATCH XOR ARRAYTOTEXT VALUETOTEXT
  BINOM.DIST BINOM.INV CHISQ.DIST CHISQ.INV CONFIDENCE.NORM CONFIDENCE.T COVARIANCE.P COVARIANCE.S EXPON.DIST F.DIST
  F.INV GAMMA.DIST GAMMA.INV HYPGEOM.DIST LOGNORM.DIST MODE.SNGL NEGBINOM.DIST NORM.DIST NORM.INV NORM.S.DIST
  NORM.S.INV PERCENTILE.EXC PERCENTILE.INC PERCENTRANK.EXC PERCENTRANK.INC POISSON.DIST QUARTILE.EXC QUARTILE.INC
  RANK.AVG RANK.EQ STDEV.P STDEV.S T.DIST T.DIST.2T T.DIST.RT T.INV T.INV.2T T.TEST VAR.P VAR.S WEIBULL.DIST Z.TEST`
    .trim()
    .split(/\s+/),
);
const NEWEST = new Set(["FILTER", "SORT"]);

/** A look at the letters alone, before a formula is taken apart: most formulas of a workbook have no mark. */
const mayHaveMarks = (formula: string) => /_xl/i.test(formula);

function typedPieces(stored: string): string {
  const typed = ownNamesTyped(stored);
  if (!mayHaveMarks(typed)) return typed;
  return rewritten(typed, ({ kind, text }) =>
    kind === "call" || kind === "name" ? text.replace(MARKS, "") : undefined,
  );
}

/** How formulas of one form are typed. */
interface TypedForm {
  readonly form: string;
  /** What stands between their addresses and numbers; nothing where they are typed as they are stored. */
  readonly between: readonly string[] | undefined;
  /** False where each is to be looked at for itself. */
  readonly isAlike: boolean;
}

/** A workbook has some thousand forms of formulas. */
const typedForms = new BoundedMap<string, TypedForm>(10_000);
const TAKEN = new RegExp(`[${ADDRESS}${NUMBER}]`);

const textsAt = (formula: string, spans: readonly number[]) =>
  spans.flatMap((start, at) => (at % 2 === 0 ? [formula.slice(start, spans[at + 1])] : []));

function readTypedForm(stored: string, form: string, spans: readonly number[]): TypedForm {
  const typed = typedPieces(stored);
  if (typed === stored) return { form, between: undefined, isAlike: true };
  const bare = bareForm(typed);
  const isAlike =
    bare !== undefined && textsAt(typed, bare.spans).join("\n") === textsAt(stored, spans).join("\n");
  return { form, between: bare?.form.split(TAKEN), isAlike };
}

/** Joined at once: a text that is added to piece by piece keeps all its pieces, several times its own size. */
function joinedBetween(between: readonly string[], stored: string, spans: readonly number[]): string {
  const pieces = [between[0] ?? ""];
  for (let at = 1; at < between.length; at += 1)
    pieces.push(stored.slice(spans[2 * at - 2], spans[2 * at - 1]), between[at] ?? "");
  return pieces.join("");
}

/** A formula of a file as it is typed. */
export interface TypedFormula {
  readonly typed: string;
  /** What it says apart from its addresses and numbers; nothing for one that is like no other. */
  readonly form: string | undefined;
}

/** The formula as it is typed, with what it shares with others. */
export function typedFormula(stored: string): TypedFormula {
  const bare = bareForm(stored);
  if (bare === undefined) return { typed: typedPieces(stored), form: undefined };
  const known = typedForms.get(bare.form) ?? readTypedForm(stored, bare.form, bare.spans);
  typedForms.set(bare.form, known);
  const { form, between, isAlike } = known;
  if (!isAlike) return { typed: typedPieces(stored), form };
  return { typed: between === undefined ? stored : joinedBetween(between, stored, bare.spans), form };
}

/** The formula as it is typed: our names with their dot, newer built-in names without the marks of the file. */
export const typedForm = (stored: string): string => typedFormula(stored).typed;

/** Names that a formula in the form of a file gives itself, in capitals. */
export function localNames(stored: string): ReadonlySet<string> {
  const marked = tokensOf(stored).filter(({ text }) => text.toLowerCase().startsWith(LOCAL));
  return new Set(marked.map(({ text }) => text.slice(LOCAL.length).toUpperCase()));
}

function fileName(name: string): string {
  const upper = name.toUpperCase();
  if (NEWEST.has(upper)) return `_xlfn._xlws.${upper}`;
  return NEWER.has(upper) ? `_xlfn.${upper}` : name;
}

const DEPTH: Readonly<Partial<Record<Token["kind"], number>>> = {
  open: 1,
  openArray: 1,
  close: -1,
  closeArray: -1,
};

/** The arguments of a call, each as its pieces; the opening bracket stands right before `start`. */
function argumentsFrom(tokens: readonly Token[], start: number): Token[][] {
  const found: Token[][] = [[]];
  let depth = 0;
  for (const token of tokens.slice(start)) {
    depth += DEPTH[token.kind] ?? 0;
    if (depth < 0) break;
    if (depth === 0 && token.kind === "comma") found.push([]);
    else found.at(-1)?.push(token);
  }
  return found;
}

/** Names that LET or LAMBDA give, in capitals: a file marks each of them wherever it stands. */
function givenNames(formula: string): ReadonlySet<string> {
  const tokens = tokensOf(formula).filter(({ kind }) => kind !== "space");
  const given = tokens.flatMap(({ kind, text }, at) => {
    const isLet = kind === "call" && text.toUpperCase() === "LET";
    if (!isLet && !(kind === "call" && text.toUpperCase() === "LAMBDA")) return [];
    const names = argumentsFrom(tokens, at + 2).slice(0, -1);
    return names.filter((_, position) => !isLet || position % 2 === 0);
  });
  const single = given.filter(([name, ...rest]) => name?.kind === "name" && rest.length === 0);
  return new Set(single.map(([name]) => String(name?.text).toUpperCase()));
}

/** A formula as typed, with or without its equals sign, in the form that a file holds. */
export function fileForm(typed: string): string {
  const formula = typed.replace(/^=/, "");
  const given = givenNames(formula);
  const marked = rewritten(formula, ({ kind, text }) => {
    if (kind !== "call" && kind !== "name") return undefined;
    if (given.has(text.toUpperCase())) return LOCAL + text;
    return kind === "call" ? fileName(text) : undefined;
  });
  return storedForm(marked);
}
