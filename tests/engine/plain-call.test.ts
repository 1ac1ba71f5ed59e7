import { describe, expect, it } from "vitest";
import { evaluateFormulas } from "../../src/engine/evaluate-formulas";
import { plainCall } from "../../src/engine/plain-call";
import { catalogue } from "../../src/functions/catalogue";
import { exampleWorkbook } from "./example-workbook";

const { placed } = exampleWorkbook(catalogue);
const formulas = [
  ...placed.map(({ formula }) => formula),
  '=BLADE.CARBON("nonsuch")',
  "blade.carbon( 1095 )",
  'BLADE.TEMPERED_HRC("1095",-200)',
  'BLADE.TEMPERED_HRC("1095",,2)',
  "BLADE.CARBON()",
  'BLADE.CARBON("")',
  "BLADE.CARBON(TRUE)",
  'BLADE.CARBON({"1095","5160";"O1","a, ""quoted"" one"})',
  'BLADE.HARDNESS({20.5;-1;1e2},"HRC","HV")',
  'BLADE.CARBON("1095",1,2)',
];

// The engine is the other way to the same answer.
describe("a call with constants alone is answered as by the engine", () => {
  it("every worked case and odd arguments", async () => {
    const asked = formulas.filter((formula) => plainCall(formula) !== undefined);
    expect(asked.length).toBeGreaterThan(100);
    const byEngine = await evaluateFormulas(asked);
    for (const { formula, rows } of byEngine) expect(plainCall(formula), formula).toEqual(rows);
  });

  it.each([
    "=1+1",
    "=BLADE.CARBON(A1)",
    '=BLADE.CARBON("1095")*2',
    '=BLADE.CARBON("10"&"95")',
    "=BLADE.NONSUCH(1)",
    "=SUM(1,2)",
    "=BLADE.CARBON(",
    "",
  ])("%s is left to the engine", (formula) => {
    expect(plainCall(formula)).toBeUndefined();
  });
});
