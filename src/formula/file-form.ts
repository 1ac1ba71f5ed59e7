import { maskOf, replaceOutsideTexts } from "./mask";
import { storedForm } from "./stored-names";

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

const CALLED = /(?<![\w.])([A-Z][A-Z0-9.]*)(?=\()/gi;

function fileName(name: string): string {
  const upper = name.toUpperCase();
  if (NEWEST.has(upper)) return `_xlfn._xlws.${upper}`;
  return NEWER.has(upper) ? `_xlfn.${upper}` : name;
}

const DEPTH: Readonly<Partial<Record<string, number>>> = { "(": 1, "{": 1, ")": -1, "}": -1 };

/** Where the arguments of a call begin and end; the opening bracket stands right before `start`. */
function argumentsFrom(mask: string, start: number): [start: number, end: number][] {
  const found: [number, number][] = [];
  let [depth, first] = [0, start];
  for (let at = start; at < mask.length && depth >= 0; at += 1) {
    const letter = mask[at] ?? "";
    depth += DEPTH[letter] ?? 0;
    const isEnd = depth < 0 || (depth === 0 && letter === ",");
    if (!isEnd) continue;
    found.push([first, at]);
    first = at + 1;
  }
  return found;
}

/** Names that LET or LAMBDA give: a file marks each of them wherever it stands. */
function givenNames(formula: string): ReadonlySet<string> {
  const mask = maskOf(formula);
  return new Set(
    [...mask.matchAll(/(?<![\w.])(LET|LAMBDA)\(/gi)].flatMap((match) => {
      const given = argumentsFrom(mask, match.index + match[0].length).slice(0, -1);
      const isLet = match[1]?.toUpperCase() === "LET";
      return given
        .filter((_, position) => !isLet || position % 2 === 0)
        .map(([start, end]) => formula.slice(start, end).trim().toUpperCase());
    }),
  );
}

/** A formula as typed, with or without its equals sign, in the form that a file holds. */
export function fileForm(typed: string): string {
  const formula = typed.replace(/^=/, "");
  const given = givenNames(formula);
  const named = replaceOutsideTexts(
    formula,
    /(?<![\w.!$])([\p{L}_][\p{L}\p{N}_.]*)(?![\w(!:])/gu,
    (_, word) => (given.has(word.toUpperCase()) ? `_xlpm.${word}` : word),
  );
  return storedForm(replaceOutsideTexts(named, CALLED, ([, name = ""]) => fileName(name)));
}
