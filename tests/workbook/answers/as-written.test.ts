import { expect, it } from "vitest";
import { ANSWER_FORMS } from "../../../src/workbook/answers/forms";
import { readAnswer } from "../../../src/workbook/answers/read-answer";

// A heat treater copies the temper as the order has it, or writes it as a furnace sheet does. The figure is the one
// that is written, 734 °F being 390 °C by definition of the scales.

const fields = ANSWER_FORMS.flatMap(({ mark, asked }) => (mark === "H" ? asked : []));
const temper = fields.find(({ kind }) => kind === "temperature");

it.each([
  ["2 x 390 °C", 390],
  ["2 × 2 h at 387 °C", 387],
  ["2 × 2 h at 734 °F", 390],
  ["3x1.5h @ 205", 205],
  ["2 x 2 h 205 °C", 205],
  ["350 °C", 350],
])("reads a temper written as %s", (written, celsius) => {
  if (temper === undefined) throw new Error("no field of a temper");
  expect(readAnswer({ value: written }, temper, { currency: "EUR" })?.value).toBeCloseTo(celsius, 6);
});

it("asks for the lot, the temper and the hardening as run, which the order wants reported", () => {
  expect(fields.map(({ heading }) => heading)).toEqual(
    expect.arrayContaining(["Lot no.", "Temper as run °C", "Hardened as run"]),
  );
  expect(fields.find(({ heading }) => heading === "Lot no.")?.goesTo).toBe("Treatment lot no.");
});
