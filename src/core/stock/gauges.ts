import sheet from "../../data/stock/sheet-gauges.json";
import stainless from "../../data/stock/stainless-gauges.json";
import wire from "../../data/stock/standard-wire-gauge.json";
import { numberText } from "../quantity-text";
import { NotAvailable } from "../refusal";
import { relation } from "../relation";

/** Gauge numbers of sheet. */
export const SHEET_GAUGE = relation({
  title: "Thickness of a gauge number",
  source: "gauge-sheet-steel",
  locator: "thickness by gauge number",
  evidence: "standard",
  inputs: { gauge: { label: "gauge", unit: "", min: 3, max: 30 } },
  output: { label: "thickness", unit: "mm" },
  error: { size: null, unit: "mm", kind: "nominal thickness; sheet is rolled to a tolerance on either side" },
  note:
    "Carbon steel sheet unless the text says stainless or SWG: 16 gauge is 1.519 mm in carbon steel, 1.588 mm in " +
    "stainless, 1.626 mm in SWG. Numbers for stainless sheet are recalled.",
});

/** One row of numbers that "gauge" can mean. */
export type GaugeFamily = "carbon steel" | "stainless" | "SWG";

const MM_PER_INCH = 25.4;

const TABLES: Readonly<Record<GaugeFamily, ReadonlyMap<number, number>>> = {
  "carbon steel": thicknesses(sheet.rows),
  stainless: thicknesses(stainless.rows),
  SWG: thicknesses(wire.rows),
};

function thicknesses(rows: readonly (readonly number[])[]): ReadonlyMap<number, number> {
  return new Map(rows.map(([gauge = 0, inches = 0]) => [gauge, inches]));
}

/**
 * Thickness of a gauge number.
 *
 * @param gauge - The number, as in "10 ga"
 * @param family - What is measured by it: the same number means three thicknesses.
 * @returns Nominal thickness [mm]
 * @throws NotAvailable for a number that the table does not hold.
 * Error and source: {@link SHEET_GAUGE}.
 */
export function gaugeThickness(gauge: number, family: GaugeFamily): number {
  const table = TABLES[family];
  const inches = table.get(gauge);
  if (inches !== undefined) return inches * MM_PER_INCH;
  const numbers = [...table.keys()];
  throw new NotAvailable(
    `gauge ${numberText(gauge)} given; the table for ${family} holds whole numbers from ` +
      `${Math.min(...numbers)} to ${Math.max(...numbers)}: give the thickness in mm or inches`,
  );
}
