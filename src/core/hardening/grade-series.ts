import table from "../../data/hardening/grade-hardenability.json";
import { relation } from "../relation";
import { number, records, text } from "../table";
import { IDEAL_DIAMETER } from "./ideal-diameter";

/** Grades of the series with more carbon than the factors cover. */
export const GRADE_SERIES = relation({
  ...IDEAL_DIAMETER,
  title: "Ideal diameter of grades with over 0.90 % C in solution",
  source: "plate-quench-calculation",
  locator: table.locator,
  evidence: "compiled",
  inputs: {},
  error: { size: 20, unit: "%", kind: "carbon beyond the factors of the standard" },
});

/** Ideal diameter [mm] and pearlite nose time [s] of the grades that were calculated one by one. */
export const gradeHardenability = records(table, {
  grade: text,
  diameter: number,
  noseS: number,
  note: text,
});
