import { InvalidValue } from "../../core/refusal";
import { densityOf } from "../../core/steel/density";
import { findSteel } from "../../core/steel/find";
import { parseMeasure } from "../measure";
import { optionalText, type Parameter } from "../parameters";

const LIGHTEST = 2;
const HEAVIEST = 25;
/** A number with a decimal part, or one that states a unit of density: "7.85", "7,85 g/cm3". */
const DENSITY_TEXT = /^\d{1,2}(?:[.,]\d+)?\s*(?:g\/cm[3³])?$/;

function asDensity(value: number): number {
  if (value >= LIGHTEST && value <= HEAVIEST) return value;
  throw new InvalidValue(`density ${value} given; give 2 to 25 g/cm³, or a steel`);
}

/** 2 to 25 is a density, 1 to 2 the EN number of a steel, everything else a designation or an analysis. */
function density(given: string | number): number {
  if (typeof given === "number" && given >= LIGHTEST && given <= HEAVIEST) return given;
  if (typeof given === "string" && DENSITY_TEXT.test(given)) {
    const value = parseMeasure(given, "density", "g/cm³");
    if (value >= LIGHTEST || /cm/.test(given)) return asDensity(value);
  }
  if (typeof given === "string" && /kg\s*\/\s*m[3³]$/.test(given)) {
    return asDensity(parseMeasure(given, "density", "g/cm³"));
  }
  return densityOf(findSteel(given)).value;
}

/** A steel, whose density is looked up, or the density itself. */
export const steelOrDensity: Parameter<number> = optionalText({
  label: "steel or density",
  kind: "steel",
  help: "Grade in quotes or a cell that holds it, or a density in g/cm³ (8.5 for brass). Numbers from 2 to 25 are densities.",
  accepts: 'a grade such as "1095" or a density in g/cm³',
  find: density,
  fallback: "7.85",
});
