import { temperatureText } from "../quantity-text";
import type { Relation } from "../relation";
import { sourceText } from "../sources";
import { CURVE_BANDS, type FittedCurve } from "./fits";

const KIND = "half-width that covers 90 % of rows of sources that took no part in a curve";

function timeText(fit: FittedCurve): string {
  if (fit.form === "cubic") {
    const sample = fit.sources.length === 1 ? ", in sample only: one source" : "";
    return `${fit.rows} rows, ${fit.rms} HRC root mean square about the curve${sample}`;
  }
  const time = fit.timePrinted ? `${fit.hours} h in all` : `no time printed, ${fit.hours} h taken`;
  return `${fit.rows} rows, ${time}`;
}

/** A tester and a sheet in whole points tell no smaller rise [HRC]. */
const READING = 1;

/** Where a table rises with the temper, in words; empty where it only falls. */
function riseText(fit: FittedCurve): string {
  if (fit.form === "cubic") return "";
  const rises = [...fit.knots.keys()].filter(
    (i) => (fit.knots[i]?.[1] ?? 0) > (fit.knots[i - 1]?.[1] ?? 100),
  );
  const last = fit.knots[rises[rises.length - 1] ?? -1];
  const start = fit.knots[(rises[0] ?? 0) - 1];
  if (start === undefined || last === undefined) return "";
  const why =
    last[1] - start[1] > READING
      ? "carbides of chromium, molybdenum and vanadium harden it anew (secondary hardening)"
      : "no more than a reading is good for";
  return `; as printed it rises from ${temperatureText(start[0])} to ${temperatureText(last[0])}: ${why}`;
}

/** The published curve of a grade as a relation. */
export function curveRelation(fit: FittedCurve): Relation {
  const [source, ...others] = fit.sources;
  const hardened = fit.form === "table" ? fit.hardenC : null;
  const also = others.map((key) => `; also ${sourceText(key)}`).join("");
  return {
    title: `Hardness after temper of ${fit.id}`,
    source: source ?? "tempering-data-set",
    locator:
      fit.form === "cubic" ? "rows of the grade, cubic in the Hollomon-Jaffe parameter" : "hardness table",
    evidence: fit.form === "cubic" ? "fitted" : "measured",
    inputs: {
      temperC: { label: "temper", unit: "°C", min: fit.temperC[0], max: fit.temperC[1] },
      ...(hardened === null
        ? {}
        : { hardenC: { label: "hardening temperature", unit: "°C", min: hardened[0], max: hardened[1] } }),
    },
    output: { label: "hardness", unit: "HRC" },
    error: { size: CURVE_BANDS.blade.halfWidth, unit: "HRC", kind: KIND },
    note: `${timeText(fit)}${riseText(fit)}${also}`,
  };
}
