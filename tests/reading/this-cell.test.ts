import { describe, expect, test } from "vitest";
import { Refusal } from "../../src/core/refusal";
import { type Explanation, explain } from "../../src/taskpane/cell/explain";
import { selected, sheetPort } from "./sheet-port";

const CELLS = {
  A7: [["1095"]],
  B7: [["400 F"]],
  C7: [["hot"]],
  D7: [[null]],
  F7: [["#N/A"]],
  "B2:B4": [[180], [200], ["hot"]],
  "E2:E6": [[150], [175], [200], [225], [250]],
} as const;

async function explained(formula: string, more: Parameters<typeof selected>[2] = {}): Promise<Explanation> {
  const found = await explain(sheetPort(CELLS).port, selected(formula, "", more));
  if (found === null) throw new Error("nothing of ours in it");
  return found;
}

describe("inputs as read", () => {
  // By hand, °C = (°F − 32) × 5 / 9 (definition of the scales, NIST SP 811): 400 °F is 204.4 °C.
  test("given, held and read, with units, defaults and both scales", async () => {
    const found = await explained("=BLADE.TEMPERED_HRC(A7,B7)");
    const [steel, temper, hours, cycles] = found.calls[0]?.readings ?? [];
    expect(steel).toMatchObject({ given: "A7", holds: "1095", readAs: "1095", fault: "" });
    expect(steel?.steel?.composition.C).toBeCloseTo(0.95, 9);
    expect(temper).toMatchObject({ given: "B7", holds: "400 F", readAs: "204 °C (400 °F)" });
    expect(hours).toMatchObject({ given: "", readAs: "left out: 2" });
    expect(cycles?.readAs).toMatch(/^left out/);
  });

  test("a range says how many cells and shows its ends", async () => {
    const found = await explained('=BLADE.TEMPERED_HRC("1095",E2:E6)');
    expect(found.calls[0]?.readings[1]?.holds).toBe("5 cells: 150, 175 … 250");
    expect(found.calls[0]?.readings[1]?.readAs).toBe("150 °C (302 °F) (row 1 of 5)");
    expect(found.calls[0]?.rows).toBe(5);
  });

  test("what the sheet works out inside the formula is not guessed, and gives no answer here", async () => {
    const found = await explained("=BLADE.CARBON(INDEX(A1:A9,2))");
    expect(found.calls[0]?.readings[0]).toMatchObject({ given: "INDEX(A1:A9,2)", holds: "", fault: "" });
    expect(found.calls[0]?.readings[0]?.readAs).toContain("not read here");
    expect(found.calls[0]).toMatchObject({ answer: [], problem: null });
  });
});

describe("answer and way out", () => {
  // SAE numbering: the last two digits are hundredths of a per cent of carbon.
  test("a call inside another formula is worked out too, the outer first", async () => {
    const found = await explained('=ROUND(BLADE.CARBON("1095"),1)&BLADE.CARBON("1084")');
    const [first, second] = found.calls.map(({ answer }) => answer[0]);
    expect([first?.cell, second?.cell]).toEqual([0.95, 0.84]);
    expect(first?.column.unit).toBe("mass %");
  });

  test("an input that cannot be read: its sentence, the cell to mend and what is accepted", async () => {
    const { calls } = await explained("=BLADE.TEMPERED_HRC(A7,C7)");
    expect(calls[0]?.problem).toMatchObject({ code: "#VALUE!", sentence: expect.stringContaining('"hot"') });
    expect(calls[0]?.problem?.wayOut).toMatch(/^Mend C7 \(.*\): it takes a temperature in °C/);
  });

  test("a cell that only passes an error on is not to be typed over", async () => {
    const { calls } = await explained("=BLADE.TEMPERED_HRC(A7,F7)");
    expect(calls[0]?.problem?.wayOut).toBe("F7 (temper C) only passes on #N/A: mend the cell it comes from.");
  });

  test("a required input that is empty is named", async () => {
    const { calls } = await explained("=BLADE.TEMPERED_HRC(A7,D7)");
    expect(calls[0]?.problem?.sentence).toContain("is empty");
    expect(calls[0]?.problem?.wayOut).toContain("Mend D7");
  });

  test("readable inputs that are refused together point at the range", async () => {
    const { calls } = await explained('=BLADE.TEMPERED_HRC("1095",790)');
    expect(calls[0]?.problem?.sentence).toMatch(/790 °C \(1454 °F\)/);
    expect(calls[0]?.problem?.wayOut).toContain("inside the range");
  });

  test("a cell that another one's formula fills is explained by its own row and column", async () => {
    const filledBy = {
      address: "Plan!F2",
      formula: '=BLADE.TEMPERED_RANGE("1095",B2:B4)',
      row: 1,
      column: 2,
    };
    const good = (await explained("", { filledBy })).calls[0];
    expect(good?.answer.find(({ isSelected }) => isSelected)?.column.label).toBe(
      good?.answer[2]?.column.label,
    );
    expect(good?.problem).toBeNull();
    expect(good?.answer.some(({ cell }) => cell instanceof Refusal)).toBe(false);
    const bad = (await explained("", { filledBy: { ...filledBy, row: 2 } })).calls[0];
    expect(bad?.problem?.sentence).toContain('"hot"');
    expect(bad?.problem?.wayOut).toContain("Mend B2:B4");
  });

  test("names as files hold them are read as ours", async () => {
    const found = await explained('=[2]!_xldudf_blade_carbon("1095")');
    expect(found.formula).toBe('=BLADE.CARBON("1095")');
    expect(found.calls[0]?.answer[0]?.cell).toBe(0.95);
  });

  test("a formula without ours, or a constant, is none to explain; a torn one says so", async () => {
    const { port } = sheetPort(CELLS);
    for (const formula of ["=SUM(A1:A3)", "1095", "", '="BLADE.CARBON(1)"'])
      expect(await explain(port, selected(formula)), formula).toBeNull();
    expect(await explain(port, selected('=BLADE.CARBON("1095"'))).toMatchObject({ isReadable: false });
  });
});
