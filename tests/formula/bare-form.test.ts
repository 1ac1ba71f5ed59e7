import fc from "fast-check";
import { expect, test } from "vitest";
import { ADDRESS, bareForm, FIGURES, NUMBER } from "../../src/formula/bare-form";
import { tokensOf } from "../../src/formula/tokens";

const marked = (form: string) => form.replaceAll(ADDRESS, "¤").replaceAll(NUMBER, "#");

test("addresses and numbers are taken out, texts, sheets, names and calls stay", () => {
  const bare = bareForm(`=IF('Steel A1'!$B2>=1.5,SUM(C$3:$D$4)&"A1 7",LOG10(X1_2)+Lines!E5)`);
  expect(marked(bare?.form ?? "")).toBe(`=IF('Steel A1'!¤>=#,SUM(¤:¤)&"A1 7",LOG10(X1_2)+Lines!¤)`);
  expect(bare?.cells).toEqual([1, 1, 2, 2, 2, 1, 3, 3, 3, 4, 4, 0]);
  expect(bare?.numbers).toEqual(["1.5"]);
});

test("formulas that plain words do not make up are left to be read piece by piece", () => {
  for (const formula of [
    "=Run[Alloy]",
    "=SUM(1:3)",
    "=SUM($A:$B)",
    "=1E+5",
    "=A1;B1",
    '="open',
    "='open",
    "=1.2.3",
  ])
    expect(bareForm(formula)).toBeUndefined();
});

/** Pieces of formulas as they stand beside each other in files, the doubtful ones among them. */
const PIECES = [
  ...[
    "A1",
    "$B$2",
    "C$30",
    "$XFD1048576",
    "XFE1",
    "A0",
    "A1048577",
    "R1C1",
    "LOG10",
    "AB12_x",
    "Stück",
    "E5",
    "TRUE",
  ],
  ...[
    "1",
    "2.5",
    ".5",
    "1E+3",
    "007",
    "1.2.3",
    "2024!",
    "Lines!",
    "'Heat 1'!",
    "'it''s'!",
    "[1]x!",
    "A1!",
    "Jan:Mär!",
  ],
  ...[
    '"A1"',
    '"say ""5"""',
    "#N/A",
    "#REF!",
    "#A1",
    "{1,2;3,4}",
    '{"a}",1}',
    "Run[A1]",
    "@",
    "#",
    "%",
    "(",
    ")",
    ",",
  ],
  ...[
    "+",
    "-",
    "*",
    "/",
    "^",
    "&",
    "=",
    "<>",
    ">=",
    ":",
    " ",
    ";",
    "!",
    "$",
    "_xlfn.",
    "BLADE.HRC(",
    "SUM(",
    "\n",
  ],
];

const TAKEN = new Set(["cell", "number"]);
const kinds = (formula: string) => tokensOf(formula).map(({ kind }) => kind);
const rest = (formula: string) =>
  tokensOf(formula).flatMap(({ kind, text }) => (TAKEN.has(kind) ? [] : [text]));

test("two formulas of one form have the same pieces but for addresses and numbers", () => {
  const addresses = fc.infiniteStream(fc.constantFrom("A1", "$C7", "Z$99", "$AA$1000"));
  const numbers = fc.infiniteStream(fc.constantFrom("1", "20", "3.75", ".5"));
  const pieces = fc.array(fc.constantFrom(...PIECES), { maxLength: 14 });
  fc.assert(
    fc.property(pieces, addresses, numbers, (written, address, number) => {
      const formula = `=${written.join("")}`;
      const bare = bareForm(formula);
      if (bare === undefined) return;
      const other = bare.form
        .replaceAll(ADDRESS, () => address.next().value)
        .replaceAll(NUMBER, () => number.next().value);
      expect(kinds(other)).toEqual(kinds(formula));
      expect(rest(other)).toEqual(rest(formula));
      expect(bare.cells.length / FIGURES).toBe(bare.form.split(ADDRESS).length - 1);
      expect(bare.numbers.length).toBe(bare.form.split(NUMBER).length - 1);
    }),
    { numRuns: 5000 },
  );
});
