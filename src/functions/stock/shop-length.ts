import { InvalidValue } from "../../core/refusal";
import { type GaugeFamily, gaugeThickness } from "../../core/stock/gauges";
import { parseMeasure } from "../measure";

const GAUGE = /^(?:#|no\.?\s*)?(\d+)\s*(gauge|gage|ga|swg)\.?\s*(.*)$/i;
const FEET_AND_INCHES = /^(.+?(?:ft|feet|foot|'))\s*,?\s*(.+)$/i;

const FAMILIES: Readonly<Record<string, GaugeFamily>> = {
  "": "carbon steel",
  carbon: "carbon steel",
  "carbon steel": "carbon steel",
  steel: "carbon steel",
  sheet: "carbon steel",
  stainless: "stainless",
  "stainless steel": "stainless",
  ss: "stainless",
  swg: "SWG",
  wire: "SWG",
};

function familyOf(unit: string, rest: string, text: string): GaugeFamily {
  if (unit.toLowerCase() === "swg" && rest === "") return "SWG";
  const word = rest.toLowerCase().replace(/[(),]/g, " ").trim();
  const family = Object.hasOwn(FAMILIES, word) ? FAMILIES[word] : undefined;
  if (family !== undefined) return family;
  throw new InvalidValue(
    `"${text}": "${rest}" is no row of gauge numbers; give for example "10 ga", "16 ga stainless" or "14 swg"`,
  );
}

/**
 * Any length of the shop in mm: "1-1/4 in", "0,25 in", `3' 2-1/2"`, "10 ga", "16 ga stainless", "14 swg".
 *
 * @throws InvalidValue for a bare fraction, an unknown unit or a mixture that cannot be read.
 * @throws NotAvailable for a gauge number that the tables do not hold.
 */
export function shopLength(text: string): number {
  const gauge = GAUGE.exec(text.trim());
  if (gauge !== null) {
    const [, digits = "", unit = "", rest = ""] = gauge;
    return gaugeThickness(Number(digits), familyOf(unit, rest, text));
  }
  const mixed = FEET_AND_INCHES.exec(text.trim());
  if (mixed === null) return parseMeasure(text, "length", "mm");
  const [, feet = "", inches = ""] = mixed;
  return parseMeasure(feet, "length", "mm") + parseMeasure(inches, "length", "mm");
}
