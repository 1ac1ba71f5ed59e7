import { expect, it } from "vitest";
import { inputsOf } from "../../../src/workbook/share/inputs";
import { data, figure, formula, live, row, text } from "./live";

it("lists the typed cells that formulas and names read by address, sheet by sheet in the order of the cells", () => {
  const book = live({
    sheets: {
      Plan: data(
        row(1, text("A1", "1095"), figure("B1", 58), formula("C1", "B1*2+Costs!A1"), figure("D1", 9)),
        row(2, figure("A2", 3), figure("B2", 4), '<c r="C2" t="b"><v>1</v></c>', '<c r="D2"/>'),
        row(3, figure("A3", 7), formula("B3", "SUM(A2:B2)+SUM(A2:D2)")),
        row(4, figure("A4", 5), '<c r="B4" t="str"><v>stored</v></c>', figure("C4", 8)),
        row(6, figure("A6", 11), figure("D6", 12)),
      ),
      Costs: data(row(1, figure("A1", 48.3), figure("B1", 1))),
      Empty: data(),
    },
    names: {
      Read: "Plan!$A$4:$B$5",
      "_xlnm.Print_Area": "Plan!$A$6",
      Printed_rows: "Plan!$D$6",
    },
  });
  expect(inputsOf(book)).toEqual([
    ["Plan", "B1", "58"],
    ["Plan", "A2", "3"],
    ["Plan", "B2", "4"],
    ["Plan", "C2", "TRUE"],
    ["Plan", "A4", "5"],
    ["Costs", "A1", "48.3"],
  ]);
});

it("takes a sheet for the same whatever the case in which a formula names it", () => {
  const book = live({
    sheets: { Plan: data(row(1, formula("A1", "COSTS!A1"))), Costs: data(row(1, figure("A1", 2))) },
  });
  expect(inputsOf(book)).toEqual([["Costs", "A1", "2"]]);
});
