import { carbideRelations } from "../../src/core/hardening/carbides";
import { LOWER_CRITICAL, UPPER_CRITICAL } from "../../src/core/hardening/critical";
import { DISSOLVED_CEMENTITE } from "../../src/core/hardening/dissolved";
import { DISSOLVED_HIGH_CHROMIUM } from "../../src/core/hardening/high-chromium";
import { IDEAL_DIAMETER } from "../../src/core/hardening/ideal-diameter";
import { JOMINY_CURVE } from "../../src/core/hardening/jominy";
import { RETAINED_AUSTENITE, startHalfWidth } from "../../src/core/hardening/martensite";
import { MAX_PLATE } from "../../src/core/hardening/max-section";
import { INITIAL_HARDNESS } from "../../src/core/hardening/quenched";
import { CONVERSIONS } from "../../src/core/hardness/convert";
import { TENSILE_STRENGTH, YIELD_STRENGTH } from "../../src/core/hardness/strength";
import type { Relation } from "../../src/core/relation";
import { CARBON_DIFFUSION } from "../../src/core/steel/billet";
import { densityOf } from "../../src/core/steel/density";
import { findSteel } from "../../src/core/steel/find";
import { COMPOSITION_FORMULA } from "../../src/core/tempering/composition-formula";
import { bandHalfWidth } from "../../src/core/tempering/tempered-range";
import { temperModel } from "../../src/core/tempering/tempering-model";
import { celsiusOf, type Row } from "../published-quantities";
import type { Answered } from "./checks";

/** Half-width that the library states for an answer, in the unit of the answer. */
type HalfWidth = (inputs: Row) => number;

/** The size that a relation states, which the tables here need as a number in their own unit. */
function stated({ error, title }: Relation, times = 1): HalfWidth {
  if (error.size === null) throw new Error(`"${title}" states no size of its error`);
  const size = error.size * times;
  return () => size;
}

function tempered(celsius: (inputs: Row) => number): HalfWidth {
  return (inputs) =>
    bandHalfWidth(temperModel(findSteel(inputs[0] as string)), celsius(inputs), inputs[2] as number);
}

const carbonBand: HalfWidth = ([name]) => {
  const { Cr } = findSteel(name as string).composition;
  return (Cr > 5 ? DISSOLVED_HIGH_CHROMIUM : DISSOLVED_CEMENTITE).error.size as number;
};

const startBand: HalfWidth = ([name]) => startHalfWidth(findSteel(name as string).composition);

/** Quantities whose relations state the size of their error in the unit of the table. Exact ones are not listed. */
const HALF_WIDTHS: Readonly<Record<string, HalfWidth>> = {
  "hardness after temper": tempered((inputs) => inputs[1] as number),
  "hardness after temper, °F": tempered((inputs) => celsiusOf(inputs[1] as number)),
  "composition formula": stated(COMPOSITION_FORMULA),
  "initial hardness": stated(INITIAL_HARDNESS),
  "hardness as quenched": stated(INITIAL_HARDNESS),
  "martensite start": startBand,
  "martensite start as hardened": startBand,
  "lower critical": stated(LOWER_CRITICAL),
  "upper critical": stated(UPPER_CRITICAL),
  "retained austenite": stated(RETAINED_AUSTENITE),
  "carbon in austenite": carbonBand,
  "carbide left undissolved": ([name]) =>
    carbideRelations(findSteel(name as string))[0]?.error.size ?? Number.NaN,
  "ideal diameter": stated(IDEAL_DIAMETER),
  "end-quench hardness": stated(JOMINY_CURVE),
  "hardness from Brinell": stated(CONVERSIONS[0] as Relation),
  density: ([name]) => densityOf(findSteel(name as string)).relation.error.size as number,
};

/** Quantities whose error is stated as a factor either way. */
const FACTORS: Readonly<Record<string, number>> = {
  "thickest section fully hard": MAX_PLATE.error.size as number,
  "thickest section half hard": MAX_PLATE.error.size as number,
};

/** Quantities whose error is stated in per cent of the answer. */
const PER_CENT: Readonly<Record<string, number>> = {
  "tensile strength": TENSILE_STRENGTH.error.size as number,
  "yield strength": YIELD_STRENGTH.error.size as number,
  "diffusivity of carbon": CARBON_DIFFUSION.error.size as number,
  "tensile strength, ksi": TENSILE_STRENGTH.error.size as number,
};

/** Rounding of the tables, so that a miss of exactly the half-width is inside. */
const ROUNDING = 1e-9;

/** Whether a published figure lies in the band stated for the answer; `undefined` where none is stated. */
export function isInside(quantity: string, { inputs, answer, expected }: Answered): boolean | undefined {
  const factor = FACTORS[quantity];
  if (factor !== undefined) return Math.abs(Math.log(answer / expected)) <= Math.log(factor);
  const miss = Math.abs(answer - expected) - ROUNDING;
  const perCent = PER_CENT[quantity];
  if (perCent !== undefined) return miss <= (perCent / 100) * answer;
  const halfWidth = HALF_WIDTHS[quantity];
  return halfWidth === undefined ? undefined : miss <= halfWidth(inputs);
}
