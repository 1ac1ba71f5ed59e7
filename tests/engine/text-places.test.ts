import fc from "fast-check";
import { expect, test } from "vitest";
import { calculateWorkbook } from "../../src/engine/calculate-workbook";
import { Calculator } from "../../src/engine/calculation/calculator";
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

/** What stands beside it to be added up. */
const added = fc.constantFrom<CellInput | undefined>(
  { value: 0.1 },
  { value: 0.2 },
  { value: -3 },
  { value: 1e9 },
  { value: true },
  { value: "7" },
  { formula: "=0.1+0.2" },
  { formula: "=1/0" },
  undefined,
);

const LIST = `$A$1:$A$${ROWS}`;
const ADDED = `$B$1:$B$${ROWS}`;
const OTHER = `$F$1:$F$${ROWS}`;
/** In pairs: as it is asked, and so that the engine compares cell by cell. */
const ASKED = [
  [`=COUNTIF(${LIST},C1)`, `=COUNTIF(${LIST},"="&C1)`],
  ["=COUNTIF(A$1:A20,C1)", '=COUNTIF(A$1:A20,"="&C1)'],
  [`=COUNTIF(${LIST},"*"&C1)`, `=COUNTIF(${LIST},"=*"&C1)`],
  [`=IFNA(MATCH(C1,${LIST},0),"none")`, `=IFNA(MATCH(C1&"",IF(ISERROR(${LIST}),"",${LIST}),0),"none")`],
  [
    `=IFNA(MATCH(INDEX(C1:C2,1),${LIST},0),"none")`,
    `=IFNA(MATCH(C1&"",IF(ISERROR(${LIST}),"",${LIST}),0),"none")`,
  ],
  [`=IFNA(MATCH(5,${LIST},0),"none")`, `=IFNA(XMATCH(5,${LIST},0),"none")`],
  [`=IFNA(MATCH(-3,${ADDED},0),"none")`, `=IFNA(XMATCH(-3,${ADDED},0),"none")`],
  // Asked twice: the second has the count of the first.
  [`=COUNTIF(${LIST},"?*")`, `=COUNTIFS(${LIST},"?*")`],
  [`=COUNTIF(${LIST},"?*")`, `=COUNTIFS(${LIST},"?*")`],
  [`=COUNTIF(${ADDED},"<1")`, `=COUNTIFS(${ADDED},"<1")`],
  [`=COUNTIFS(${LIST},C1,${OTHER},C2)`, `=COUNTIFS(${LIST},"="&C1,${OTHER},"="&C2)`],
  [`=COUNTIFS(${LIST},C1,$F$2:$F$9,C2)`, `=COUNTIFS(${LIST},"="&C1,$F$2:$F$9,"="&C2)`],
  [`=COUNTIFS(${LIST},C1,${ADDED},">0")`, `=COUNTIFS(${LIST},"="&C1,${ADDED},">0")`],
  [`=COUNTIFS(${ADDED},"<>0.2*",${LIST},C1)`, `=COUNTIFS(${ADDED},"<>0.2*",${LIST},"="&C1)`],
  [
    `=COUNTIFS(${LIST},"<>"&LEFT(C1,2)&"*",${OTHER},C2)`,
    `=COUNTIFS(${LIST},"<>"&LEFT(C1,2)&"*",${OTHER},"="&C2)`,
  ],
  [`=COUNTIFS(${LIST},"",${OTHER},C2)`, `=COUNTIFS(${LIST},"",${OTHER},"="&C2)`],
  [`=SUMIF(${LIST},C1,${ADDED})`, `=SUMIF(${LIST},"="&C1,${ADDED})`],
  [`=SUMIF(${LIST},C1)`, `=SUMIF(${LIST},"="&C1)`],
  [`=SUMIFS(${ADDED},${LIST},C1)`, `=SUMIFS(${ADDED},${LIST},"="&C1)`],
  [`=SUMIFS(${ADDED},${LIST},C1,${OTHER},C2)`, `=SUMIFS(${ADDED},${LIST},"="&C1,${OTHER},"="&C2)`],
];

// Outside check: the published engine's own way through all cells, which any other form of the criterion takes.
test("texts are counted and found by their place as the engine finds them cell by cell", async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.array(fc.tuple(cell, added, fc.constantFrom("oak", "Oak", "é")), {
        minLength: ROWS,
        maxLength: ROWS,
      }),
      fc.constantFrom(...WORDS.filter((word) => !/^[<=]/.test(word))),
      async (column, wanted) => {
        const rows = column.map(([content, number, word], row): (CellInput | undefined)[] => {
          const [quick, slow] = ASKED[row] ?? [];
          const pair = [quick, slow].map((formula) => (formula === undefined ? undefined : { formula }));
          const asked = [text(wanted), text("oak")][row];
          return [content, number, asked, ...pair, text(word)];
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

test("a criterion with marks is counted once for all who ask, and anew after an edit", () => {
  const rows = Array.from({ length: 30 }, (): (CellInput | undefined)[] => [
    text("Alder"),
    { formula: '=COUNTIF(A$1:A$30,"al*")' },
  ]);
  const calculator = new Calculator({ sheets: [{ name: "S", rows }] });
  calculator.calculateAll();
  expect([calculator.at(0, 0, 1), calculator.at(0, 29, 1)]).toEqual([{ value: 30 }, { value: 30 }]);
  calculator.change([{ sheet: 0, row: 7, column: 0, content: text("Birch") }]);
  expect([calculator.at(0, 0, 1), calculator.at(0, 29, 1)]).toEqual([{ value: 29 }, { value: 29 }]);
  calculator.dispose();
});

// Outside check: Excel keeps a reference to a sheet that was deleted as #REF!, which these functions pass on (its
// documentation of the error, from memory).
test("cells of a sheet that the workbook does not have are #REF!, whoever reads them", async () => {
  const asked = [
    '=COUNTIF(Gone!A1:A30,"a")',
    '=COUNTIF(Gone!A:A,"a")',
    '=COUNTIFS(S!B1:B30,"a",Gone!A1:A30,"a")',
    '=SUMIF(S!B1:B30,"a",Gone!A1:A30)',
    '=SUMIFS(Gone!A1:A30,S!B1:B30,"a")',
    '=MAXIFS(Gone!A1:A30,S!B1:B30,"a")',
    "=SUM(Gone!A1:A30)",
    "=Gone!A1",
    "=ROWS(Gone!A1:A3)",
  ];
  const taken = ['=IF(1>2,COUNTIF(Gone!A1:A30,"a"),2)', '=IFERROR(COUNTIF(Gone!A1:A30,"a"),2)'];
  const rows = [...asked, ...taken].map((formula) => [{ formula }]);
  const done = await calculateWorkbook({ sheets: [{ name: "S", rows }] });
  for (const [row, formula] of asked.entries())
    expect(done.at("S", row, 0), formula).toMatchObject({ error: "#REF!" });
  for (const [row, formula] of taken.entries())
    expect(done.at("S", asked.length + row, 0), formula).toEqual({ value: 2 });
});
