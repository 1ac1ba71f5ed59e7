import { describe, expect, it } from "vitest";
import {
  COMPUTED_BY,
  type Origin,
  provenanceLines,
  provenanceSheet,
} from "../../../src/workbook/share/provenance";
import { shownIn } from "./paper-cells";

const NOTHING: Origin = {
  date: "",
  source: "",
  audience: "",
  enquiry: "",
  formulas: 0,
  leftOut: 0,
  noted: 0,
  left: [],
  errors: [],
  inputs: [],
};

describe("the sheet that says where a copy comes from", () => {
  it("tells of a copy without a word of the sender", () => {
    expect(provenanceLines(NOTHING)).toEqual([
      ["Provenance"],
      ["Every formula of this copy was replaced by its value; the note on a cell keeps the formula."],
      ["Estimates carry a range and an error: ask the sender before heat-treating by them."],
      ["Follow local codes and licensed practice."],
      [],
      ["Computed by", COMPUTED_BY],
      ["Date given by the sender", "not given"],
      ["Copied from", "not given"],
      ["Made for", "sheets chosen by name"],
      ["Formulas replaced by values", 0],
      ["Sheets left out", 0],
      ["Public key of the sender", "none: the copy is not signed"],
    ]);
  });

  it("tells all that there is to tell, in blocks with an empty line before each", () => {
    const lines = provenanceLines(
      {
        date: "2026-11-29",
        source: "plan.xlsx",
        audience: "Steel supplier: Old Quay Metals",
        enquiry: "L1, L4",
        asked: { number: "K7", by: "2026-12-04", lines: [["E-K7/L1", "Answer to enquiry", 8]] },
        formulas: 12,
        leftOut: 3,
        noted: 5,
        left: [["Order", "A1", "not calculated here"]],
        errors: [["Order", "B1", "#N/A"]],
        inputs: [["Order", "C1", "58"]],
      },
      "ECDSA-P256 abc",
    );
    expect(lines[1]?.[0]).toMatch(
      /; notes keep 5 of them, those of BLADE functions first; the others stay with the sender\.$/,
    );
    expect(lines.slice(5)).toEqual([
      ["Computed by", COMPUTED_BY],
      ["Date given by the sender", "2026-11-29"],
      ["Copied from", "plan.xlsx"],
      ["Made for", "Steel supplier: Old Quay Metals"],
      ["Enquiry about lines", "L1, L4"],
      ["Number of this copy", "K7"],
      ["Answer wanted by", "2026-12-04"],
      ["Formulas replaced by values", 12],
      ["Sheets left out", 3],
      ["Public key of the sender", "ECDSA-P256 abc"],
      [],
      ["Not computed by us, value as it stood"],
      ["Sheet", "Cell", "Reason"],
      ["Order", "A1", "not calculated here"],
      [],
      ["Errors"],
      ["Sheet", "Cell", "What it says"],
      ["Order", "B1", "#N/A"],
      [],
      ["Inputs"],
      ["Sheet", "Cell", "Typed content"],
      ["Order", "C1", "58"],
      [],
      ["Lines asked about"],
      ["Key of the line", "Sheet", "Cells to fill in"],
      ["E-K7/L1", "Answer to enquiry", 8],
    ]);
  });

  it("says that no note is kept, that inputs stand elsewhere, and that no day was named", () => {
    const lines = provenanceLines({
      ...NOTHING,
      formulas: 4,
      leftOut: 1,
      asked: { number: "K7", by: "", lines: [] },
    });
    expect(lines[1]?.[0]).toContain("; the formulas stay with the sender.");
    expect(lines).toContainEqual(["Answer wanted by", "within a week"]);
    expect(lines.slice(-3)).toEqual([[], ["Inputs"], ["They stand on sheets that were left out."]]);
    expect(provenanceLines({ ...NOTHING, leftOut: 1, inputs: [["A", "B1", "2"]] })).not.toContainEqual([
      "They stand on sheets that were left out.",
    ]);
  });

  it("ends with the seal, an empty line above it, each word in a cell of its own", () => {
    const sheet = provenanceSheet(
      [["Provenance"], [], ["Sheets left out", 3], ["a", "", "c"]],
      [["SHA-256 of this copy", "ff"]],
    );
    expect(shownIn(sheet)).toEqual([
      ["Provenance"],
      [],
      ["Sheets left out", 3],
      ["a", "c"],
      [],
      ["SHA-256 of this copy", "ff"],
    ]);
    expect(sheet.cells.map(({ row, column }) => [row, column])).toEqual([
      [0, 0],
      [2, 0],
      [2, 1],
      [3, 0],
      [3, 2],
      [5, 0],
      [5, 1],
    ]);
    expect(sheet).toMatchObject({ name: "Provenance", isHidden: false, merged: [], offers: [], colors: [] });
    expect([...sheet.columns.values()].map(({ size }) => size)).toEqual([216, 174, 496]);
    expect(sheet.print).toEqual({ landscape: false });
  });
});
