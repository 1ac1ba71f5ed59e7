import { expect, it } from "vitest";
import { calc } from "../../src/cli/commands/calc";
import { recalculate } from "../../src/workbook/file/patch/recalculate";
import { outcome } from "../cli/in-process";
import { handMade, partsOf } from "./hand-made";

const cell = (formula: string) => `<c r="D1"><f>${formula.replaceAll('"', "&quot;")}</f><v>77</v></c>`;
const made = (formula: string, names = "") =>
  handMade({
    sheets: {
      Plan: `<sheetData><row r="1"><c r="A1"><v>1</v></c><c r="B1"><v>4</v></c>${cell(formula)}</row><row r="2"><c r="A2"><v>2</v></c><c r="B2"><v>5</v></c></row></sheetData>`,
    },
    ...(names === "" ? {} : { names }),
  });

// Excel: a space between two ranges takes the cells that both hold (ECMA-376 Part 1, 18.17.2.2, from memory).
it.each([
  ["SUM(A1:A2 A2:B2)", /two ranges share/],
  ["SUM(A1 A2)", /two ranges share/],
  ["DCOUNT(A1:B2,0,A1:A2)", /field 0/],
  ['CELL("width",A1)', /./],
])("%s keeps the value that the file holds, and is told", async (formula, why) => {
  const { bytes, left, changed } = await recalculate(made(formula));
  expect(left.map(({ cell: at }) => at)).toEqual(["D1"]);
  expect(left[0]?.text).toMatch(why);
  expect(changed).toBe(0);
  expect(partsOf(bytes)["xl/worksheets/sheet1.xml"]).toContain("<v>77</v>");
});

// A name without both signs means another cell in each cell that uses it: B1 seen from D1 is not B1 seen from D2.
it.each(["Plan!$A1", "Plan!A$1", "Plan!A1:A2", "Plan!$A1:$B1"])(
  "a name for %s leaves the cells alone that use it, a name for a fixed cell does not",
  async (refers) => {
    const named = (text: string) =>
      `<definedNames><definedName name="Beside">${text}</definedName></definedNames>`;
    const moved = await recalculate(made("SUM(Beside)*10", named(refers)));
    expect(moved.left[0]?.text).toMatch(/name Beside/);
    expect(moved.changed).toBe(0);
    const fixed = await recalculate(made("SUM(Beside)*10", named("Plan!$A$1:$A$2")));
    expect(fixed.left).toEqual([]);
    expect(partsOf(fixed.bytes)["xl/worksheets/sheet1.xml"]).toContain("<v>30</v>");
  },
);

it("a space that parts nothing is none between ranges", async () => {
  for (const formula of ["SUM( A1 , A2 )", "A1 + A2", "IF( A1 > 0 , A2 , 3 )"])
    expect((await recalculate(made(formula))).left, formula).toEqual([]);
});

it.each([
  ['=@BLADE.CARBON("1095")', "0.95"],
  ['=1+@BLADE.CARBON("1095")', "1.95"],
  ['=_xldudf_BLADE_CARBON("1095")', "0.95"],
  ["=0.1+0.2", "0.3"],
  ["=61.2304*3/3", "61.2304"],
  ["=SUM({1;2})", "3"],
])("calc reads %s", async (formula, shown) => {
  expect((await outcome(calc, [formula])).stdout.trim()).toBe(shown);
});

it("calc says in a sentence that a semicolon parts the arguments", async () => {
  const { status, stderr } = await outcome(calc, ['=BLADE.HARDNESS(60;"HRC";"HV")']);
  expect(status).toBe(2);
  expect(stderr).toContain("a semicolon parts the arguments: write a comma");
});
