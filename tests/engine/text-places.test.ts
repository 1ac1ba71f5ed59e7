import fc from "fast-check";
import { expect, test } from "vitest";
import { calculateWorkbook } from "../../src/engine/calculate-workbook";
import type { CellInput } from "../../src/engine/cell-value";

const ROWS = 24;

const text = (value: string): CellInput => ({ value });
const WORDS = [
  "oak",
  "Oak",
  "OAK bow",
  "5",
  "05",
  "5%",
  "1/2",
  "TRUE",
  "#abc",
  "a*",
  "a?c",
  "~*",
  "<b",
  "=b",
  " oak",
  "é",
  "É",
];

/** What may stand in a cell: texts of every kind, figures, yes and no, errors, nothing, and formulas that give them. */
const cell = fc.oneof(
  { weight: 5, arbitrary: fc.constantFrom(...WORDS).map(text) },
  fc.constantFrom<CellInput | undefined>(
    { value: 5 },
    { value: 0.5 },
    { value: true },
    { error: "#N/A" },
    { value: "" },
    { formula: '="o"&"ak"' },
    { formula: "=2+3" },
    { formula: "=1/0" },
    undefined,
  ),
);

const LIST = `$A$1:$A$${ROWS}`;
/** In pairs: as it is asked, and so that the engine compares cell by cell. */
const ASKED = [
  [`=COUNTIF(${LIST},C1)`, `=COUNTIF(${LIST},"="&C1)`],
  ["=COUNTIF(A$1:A20,C1)", '=COUNTIF(A$1:A20,"="&C1)'],
  [`=COUNTIF(${LIST},"*"&C1)`, `=COUNTIF(${LIST},"=*"&C1)`],
  [`=IFNA(MATCH(C1,${LIST},0),"none")`, `=IFNA(MATCH(C1&"",IF(ISERROR(${LIST}),"",${LIST}),0),"none")`],
];

// Outside check: the published engine's own way through all cells, which any other form of the criterion takes.
test("texts are counted and found by their place as the engine finds them cell by cell", async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.array(cell, { minLength: ROWS, maxLength: ROWS }),
      fc.constantFrom(...WORDS.filter((word) => !/^[<=]/.test(word))),
      async (column, wanted) => {
        const rows = column.map((content, row): (CellInput | undefined)[] => {
          const [quick, slow] = ASKED[row] ?? [];
          const pair = [quick, slow].map((formula) => (formula === undefined ? undefined : { formula }));
          return [content, undefined, row === 0 ? text(wanted) : undefined, ...pair];
        });
        const done = await calculateWorkbook({ sheets: [{ name: "S", rows }] });
        for (const [row, [quick]] of ASKED.entries())
          expect(done.at("S", row, 3), `${quick} of "${wanted}"`).toEqual(done.at("S", row, 4));
      },
    ),
    { numRuns: 150 },
  );
}, 120_000);

test("what stands further down counts once the range reaches it, and an edit is seen", async () => {
  const names = ["Alder", "Birch", "alder", "Alder", "Birch", "ALDER"];
  const rows = Array.from({ length: 30 }, (_, row): (CellInput | undefined)[] => [
    text(names[row % names.length] ?? ""),
    { formula: `=COUNTIF(A$1:A${row + 1},A${row + 1})` },
  ]);
  const done = await calculateWorkbook({ sheets: [{ name: "S", rows }] });
  const counted = new Map<string, number>();
  for (const [row] of rows.entries()) {
    const name = (names[row % names.length] ?? "").toLowerCase();
    counted.set(name, (counted.get(name) ?? 0) + 1);
    expect(done.at("S", row, 1)).toEqual({ value: counted.get(name) });
  }
});
