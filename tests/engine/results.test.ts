import { CellValueType, type ICellData, ObjectMatrix } from "@univerjs/core";
import { describe, expect, it } from "vitest";
import { NotAvailable } from "../../src/core/refusal";
import { refusedValue } from "../../src/engine/refused-value";
import { Results } from "../../src/engine/results";

const A1 = { unitId: "u", sheetId: "s", row: 0, column: 0 };
const A2 = { ...A1, row: 1 };
const range = { startRow: 0, endRow: 1, startColumn: 0, endColumn: 0 };

type Cells = Record<number, Record<number, ICellData | null>>;

function run(cells: Cells, spilled: Cells = {}, spills = false) {
  return {
    unitData: { u: { s: new ObjectMatrix(cells) } },
    arrayFormulaCellData: { u: { s: new ObjectMatrix(spilled) } },
    arrayFormulaRange: spills ? { u: { s: { 0: { 0: range } } } } : {},
  };
}

const figure = (v: number): ICellData => ({ v, t: CellValueType.NUMBER });
const refused = (sentence: string): ICellData => ({
  v: "#N/A",
  t: CellValueType.STRING,
  custom: refusedValue(new NotAvailable(sentence)).getCustomData() ?? null,
});

describe("results of a page that keeps calculating", () => {
  it("have the sentence of each cell, spilled ones too", () => {
    const results = new Results();
    results.record(
      run({ 0: { 0: figure(1) } }, { 0: { 0: figure(1) }, 1: { 0: refused("no such steel") } }, true),
    );
    expect(results.at(A1)).toEqual({ value: 1 });
    expect(results.sentenceAt(A2)).toBe("no such steel");
    expect(results.sentenceAt(A2, "#VALUE!")).toBeUndefined();
    expect(results.spillOf(A1)).toEqual(range);
  });

  it("forget a sentence once the cell answers", () => {
    const results = new Results();
    results.record(run({ 0: { 0: refused("no such steel") } }));
    results.record(run({ 0: { 0: figure(2) } }));
    expect(results.sentenceAt(A1)).toBeUndefined();
  });

  it("forget what a formula no longer fills", () => {
    const results = new Results();
    results.record(
      run({ 0: { 0: figure(1) } }, { 0: { 0: figure(1) }, 1: { 0: refused("no such steel") } }, true),
    );
    results.record(run({ 0: { 0: figure(1) } }));
    expect(results.at(A2)).toBeUndefined();
    expect(results.spillOf(A1)).toBeUndefined();
  });

  it("keep what a later calculation did not touch", () => {
    const results = new Results();
    results.record(run({ 0: { 0: figure(1) } }));
    results.record(run({ 1: { 0: figure(2) } }));
    expect(results.at(A1)).toEqual({ value: 1 });
  });

  it("tell true from 1", () => {
    const results = new Results();
    results.record(run({ 0: { 0: { v: 1, t: CellValueType.BOOLEAN } } }));
    expect(results.at(A1)).toEqual({ value: true });
  });
});
