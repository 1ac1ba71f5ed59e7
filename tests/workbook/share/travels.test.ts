import { expect, it } from "vitest";
import { type ShareOptions, shareCopy } from "../../../src/workbook/share/share-copy";
import { data, figure, formula, made, row } from "./live";

const PLAN = data(
  row(1, figure("A1", 2), formula("B1", "A1*2"), formula("C1", "NA()"), formula("D1", "Costs!A1")),
);
const book = made({ sheets: { Plan: PLAN, Costs: data(row(1, figure("A1", 9), formula("B1", "1+1"))) } });
const only = { kind: "sheets", names: ["Plan"] } as const;
const told = async (options: ShareOptions, bytes = book) => (await shareCopy(bytes, options)).travels;

it("lists all that a copy holds, and nothing that it does not", async () => {
  expect(await told({ choice: only })).toEqual([
    "Sheets: Plan (4 values with number formats, colours, widths and print set-up)",
    "Notes: the text of 2 formulas that read cells of these sheets only",
    "Sheet Provenance: version, counts of formulas and of sheets left out, 1 typed inputs and 1 errors of these sheets",
  ]);
  expect(await told({ choice: only, source: "plan.xlsx", date: "29 November" })).toEqual([
    expect.stringMatching(/^Sheets: Plan /),
    expect.stringMatching(/^Notes: /),
    'Sheet Provenance: version, name of the workbook "plan.xlsx", date "29 November", counts of formulas and of sheets left out, 1 typed inputs and 1 errors of these sheets',
  ]);
});

it("tells no notes where there are none, and counts formulas, errors and sheets of the copy alone", async () => {
  const values = made({
    sheets: { Plan: data(row(1, figure("A1", 2))), Costs: PLAN.replace("Costs!A1", "Plan!A1") },
  });
  expect(await told({ choice: only }, values)).toEqual([
    "Sheets: Plan (1 values with number formats, colours, widths and print set-up)",
    expect.stringMatching(/^Sheet Provenance: .* 1 typed inputs and 0 errors of these sheets$/),
  ]);
  const copy = await shareCopy(book, { choice: only });
  expect([copy.formulas, copy.leftOut, copy.number]).toEqual([3, 1, undefined]);
  expect(copy.errors.map(({ sheet, cell, text }) => [sheet, cell, text])).toEqual([["Plan", "C1", "#N/A"]]);
  expect(copy.left).toEqual([]);
});
