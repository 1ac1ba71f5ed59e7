import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parseFormula } from "../../src/formula/parse";
import { pieceAt, type Token } from "../../src/formula/pieces";
import { arrayRows, isErrorCode, textLiteral, textOf, tokensOf } from "../../src/formula/tokens";

/** Formulas of every kind (grammar: ECMA-376 Part 1, 18.17.2; marks of files: MS-XLSX 2.2.2, from memory). */
const CORPUS = [
  '=BLADE.TEMPERED_HRC("1095",200,,2)',
  '="say ""hard""" & \'Smith\'\'s "steels"\'!A1',
  "='Run (old)'!A1+FOOO(1)",
  "='What? No! [2]'!$B$7*2",
  "=[2]!_xldudf_BLADE_CARBON(A2)",
  "='[Other book.xlsx]Run plan'!A1+[2]Plan!B2",
  "=SUM(Jan:Mar!B2,'Run 1:Run 9'!C3)",
  "=SUM(Plan!A1:Plan!B2)",
  "=SUM(Lines[[#This Row],[Temper C]], Kerf)",
  "=[@Steel]&Lines[[#All],[It''s '[odd']]]",
  '={"1095","0,8";2,-3.5e2;TRUE,#N/A}',
  "=SUM(A:A,$3:5,B2:C9 C1:D4,(A1,B2))",
  "=A1#+Plan!B2#*SUM(_xlfn.ANCHORARRAY(C3))",
  "=_xlfn._xlws.SORT(_xlfn.LET(_xlpm.x,1,_xlpm.x))",
  "=R1C1+RC+R[1]C[-2]",
  "=-2^2%-+A1>=1E-5",
  "=IF(A1<>B1,@A:A,#DIV/0!)",
  "=Plan!#REF!+#REF!A1",
  "=LOG10(A1)+A1 (A1:B2)",
  "=INDEX(A1:C9,1,2):C9",
  "=LAMBDA(x,x+1)(2)",
  "=Größe*1.5+.5",
];
/** What no formula is: it too must come back as it was. */
const BROKEN = ['="open', "='open!A1", "=Lines[[open", "=1 ~ 2 ; }", "", "text", "=\u0000!!''[]]"];

const kinds = (formula: string) =>
  tokensOf(formula)
    .filter(({ kind }) => kind !== "space")
    .map(({ kind }) => kind)
    .join(" ");

describe("the pieces of a formula", () => {
  test.each([...CORPUS, ...BROKEN])("joined are the formula again: %s", (formula) => {
    const tokens = tokensOf(formula);
    expect(tokens.map(({ text }) => text).join("")).toBe(formula);
    for (const { at, text } of tokens) expect(formula.slice(at, at + text.length)).toBe(text);
  });

  test("of any text joined are that text", () => {
    const bits = fc.constantFrom(
      ..."'\"[]!#$:;,(){}=<>%@&^ \\",
      "A1",
      "XFD1048576",
      "Plan",
      "_xlfn.",
      "1.5",
      "N/A",
    );
    fc.assert(
      fc.property(fc.array(fc.oneof(bits, fc.string({ maxLength: 3 })), { maxLength: 20 }), (parts) => {
        const formula = parts.join("");
        expect(
          tokensOf(formula)
            .map(({ text }) => text)
            .join(""),
        ).toBe(formula);
      }),
    );
  });

  test("of formulas put together are those of the parts, without one that is unknown", () => {
    const some = fc.subarray(CORPUS, { minLength: 2, maxLength: 5 });
    fc.assert(
      fc.property(some, (formulas) => {
        const bare = formulas.map((formula) => formula.slice(1));
        const joined = `=SUM(${bare.join(",")})`;
        expect(kinds(joined)).toBe(`operator call open ${bare.map(kinds).join(" comma ")} close`);
        expect(kinds(joined)).not.toContain("unknown");
      }),
    );
  });

  test.each([
    ["'Run (old)'!A1", "sheet cell"],
    ["[2]!BLADE.CARBON(A1)", "sheet call open cell close"],
    ["[2]Plan!A1", "sheet cell"],
    ["Jan:Mar!B2", "sheet cell"],
    ["Plan!A1:Plan!B2", "sheet cell operator sheet cell"],
    ["A1:Plan!B2", "cell operator sheet cell"],
    ["A:C", "columns"],
    ["$1:3", "rows"],
    ["R1C1", "name"],
    ["LOG10(1)", "call open number close"],
    ["A1 (B1)", "cell open cell close"],
    ["A1#", "cell operator"],
    ["#N/A", "error"],
    ["Lines[[#This Row],[Temper C]]", "name brackets"],
    // The last cell of a sheet, and three words that are none (Excel's limits: 1,048,576 rows, 16,384 columns).
    ["XFD1048576", "cell"],
    ["XFE1", "name"],
    ["A1048577", "name"],
    ["ZDP189", "name"],
  ])("%s: %s", (formula, expected) => {
    expect(kinds(formula)).toBe(expected);
  });
});

describe("a formula taken apart", () => {
  const UNREADABLE = new Set(["=R1C1+RC+R[1]C[-2]", "=LAMBDA(x,x+1)(2)", "=Plan!#REF!+#REF!A1"]);

  test.each(CORPUS.filter((formula) => !UNREADABLE.has(formula)))(
    "is written again as it stood: %s",
    (formula) => {
      expect(parseFormula(formula)?.text).toBe(formula.slice(1));
    },
  );
});

test("a text is quoted and read again", () => {
  fc.assert(
    fc.property(fc.string(), (text) => {
      expect(textOf(textLiteral(text))).toBe(text);
    }),
  );
});

test("an array constant is cut at commas and semicolons outside its texts", () => {
  expect(arrayRows('{"0,8",1; "a;""b", TRUE}')).toEqual([
    ['"0,8"', "1"],
    ['"a;""b"', "TRUE"],
  ]);
});

/** Codes of errors: ECMA-376 Part 1, 18.17.3; the later ones from memory. */
test("codes of errors are told from other texts", () => {
  for (const code of [
    "#N/A",
    "#DIV/0!",
    "#NAME?",
    "#NULL!",
    "#NUM!",
    "#REF!",
    "#VALUE!",
    "#SPILL!",
    "#GETTING_DATA",
  ])
    expect(isErrorCode(code), code).toBe(true);
  for (const text of ["", "#", "# 3", "N/A", "#N/A!x", "#1"]) expect(isErrorCode(text), text).toBe(false);
});

describe("the quicker way of cutting", () => {
  const FRAGMENTS = [
    ..."AZaz019$!:#.,;(){}[]'\"@%&*+-<>=\\_? ü",
    ...[
      "A1",
      "$A$1",
      "B$2",
      "$C3",
      "XFD1",
      "XFE1",
      "A1048576",
      "A1048577",
      "A:A",
      "$1:2",
      "LOG10",
      "1E-5",
      "0.5",
    ],
    ...[
      "SUM(",
      "BLADE.MASS(",
      "Lines!",
      "'Run (old)'!",
      "[2]",
      "Jan:Mar!",
      "R1C1",
      "#N/A",
      "#REF!",
      "=",
      "  ",
    ],
  ];
  function piecesByPattern(formula: string): Token[] {
    const tokens: Token[] = [];
    for (let at = 0; at < formula.length; at += tokens.at(-1)?.text.length ?? 1)
      tokens.push(pieceAt(formula, at));
    return tokens;
  }
  const texts = fc.array(fc.constantFrom(...FRAGMENTS), { maxLength: 14 }).map((parts) => parts.join(""));

  test("gives the pieces that the patterns give, of every formula and of what is none", () => {
    for (const formula of [...CORPUS, ...BROKEN]) expect(tokensOf(formula)).toEqual(piecesByPattern(formula));
    fc.assert(
      fc.property(texts, (text) => {
        expect(tokensOf(text)).toEqual(piecesByPattern(text));
      }),
      { numRuns: 5000 },
    );
  });
});
