import { CARBIDE_CARBON, dissolvedAt } from "../hardening/dissolved";
import { usualHardening } from "../hardening/hardening-temperature";
import { isMartensiticStainless } from "../hardening/stainless";
import { ROOM_C, subZeroGain } from "../hardening/sub-zero";
import { temperatureText } from "../quantity-text";
import { attempt, Refusal } from "../refusal";
import { isWithin } from "../relation";
import { carbonOf } from "../steel/carbon";
import type { Composition } from "../steel/composition";
import { type Lender, lenderOf } from "../steel/kin";
import type { Steel } from "../steel/steel";
import {
  COMPOSITION_FORMULA,
  checkChromium,
  checkComposition,
  formulaCurve,
  formulaHalfWidth,
  siliconBeyondFit,
} from "./composition-formula";
import { joinedCurve, polynomialCurve } from "./curve";
import { curveRelation } from "./curve-relation";
import { CURVE_BANDS, type CubicFit, type FittedCurve, fittedCurves } from "./fits";
import { HOLLOMON_JAFFE, hollomonJaffe } from "./hollomon-jaffe";
import type { TemperModel } from "./model";
import { refuseWithoutCurve } from "./no-curve";
import { stainlessModel } from "./stainless-model";
import { tableModel } from "./table-model";
import { toolSteelModel } from "./tool-steel-curves";

const FORMULA_BASIS = "by formula from composition";

interface Austenite {
  readonly composition: Composition;
  readonly assumption: string;
}

/**
 * Composition of what hardens: chromium and carbon tied up in carbide at the hardening temperature
 * take no part in tempering.
 */
function austenite(steel: Steel, hardenC: number | undefined): Austenite {
  const carbon = carbonOf(steel);
  const c = steel.composition;
  if (hardenC === undefined && carbon < CARBIDE_CARBON) return { composition: c, assumption: "" };
  const usual = usualHardening(steel);
  const at = hardenC ?? usual.celsius;
  const inSolution = dissolvedAt(steel, at);
  const assumption =
    hardenC === undefined && c.Cr > 0 ? `hardening from ${temperatureText(at)} taken, none was given` : "";
  return { composition: { ...c, C: inSolution.carbon, Cr: inSolution.chromium }, assumption };
}

function formulaModel(steel: Steel, hardenC: number | undefined): TemperModel {
  checkComposition(steel.name, { ...steel.composition, C: carbonOf(steel) });
  const { composition, assumption } = austenite(steel, hardenC);
  checkChromium(steel.name, composition.Cr);
  const { temperC, hours } = COMPOSITION_FORMULA.inputs;
  const halfWidth = formulaHalfWidth(composition);
  const basis =
    steel.grade === null ? FORMULA_BASIS : `no published curve of ${steel.name} held, ${FORMULA_BASIS}`;
  const silicon = siliconBeyondFit(composition)
    ? "more silicon than any steel behind the formula: ±4 HRC"
    : "";
  return {
    steel,
    curve: formulaCurve(composition),
    minC: temperC.min,
    maxC: temperC.max,
    minHours: hours.min,
    maxHours: hours.max,
    halfWidthAt: () => halfWidth,
    basisAt: () => basis,
    assumptions: [assumption, silicon].filter((part) => part !== ""),
    relations: [COMPOSITION_FORMULA],
  };
}

/** The formula below a measured curve that starts at 200 °C or so; null where it does not cover the steel. */
function formulaBelow(steel: Steel, hardenC: number | undefined): TemperModel | null {
  const carbon = steel.composition.C;
  return isWithin(COMPOSITION_FORMULA.inputs.C, carbon) ? formulaModel(steel, hardenC) : null;
}

function measuredModel(steel: Steel, fit: CubicFit, hardenC: number | undefined): TemperModel {
  // A hardening temperature changes nothing here, but one that could not harden the steel is refused.
  if (hardenC !== undefined && !Number.isNaN(steel.composition.C)) dissolvedAt(steel, hardenC);
  const [from, to] = fit.parameter;
  const own = polynomialCurve(fit.coefficients, fit.centre, from, to);
  const relation = curveRelation(fit);
  const basis = `own curve of ${fit.id}`;
  const common = {
    steel,
    maxC: fit.temperC[1],
    minHours: HOLLOMON_JAFFE.inputs.hours.min,
    maxHours: HOLLOMON_JAFFE.inputs.hours.max,
    assumptions: [],
  };
  const { bladeC, blade, above } = CURVE_BANDS;
  const ownBand = (celsius: number) => (celsius <= bladeC ? blade.halfWidth : above.halfWidth);
  const below = from > hollomonJaffe(150, 1) ? formulaBelow(steel, hardenC) : null;
  if (below === null) {
    const minC = fit.temperC[0];
    return {
      ...common,
      curve: own,
      minC,
      halfWidthAt: ownBand,
      basisAt: () => basis,
      relations: [relation],
    };
  }
  const lowBand = COMPOSITION_FORMULA.error.size as number;
  return {
    ...common,
    curve: joinedCurve(below.curve, own),
    minC: below.minC,
    halfWidthAt: (celsius, parameter) => (parameter < from ? lowBand : ownBand(celsius)),
    basisAt: (parameter) => (parameter < from ? `${FORMULA_BASIS}, joined to the ${basis}` : basis),
    relations: [relation, COMPOSITION_FORMULA],
  };
}

/** The model of the curves or the table held under a name; `undefined` where none are. */
function heldModel(steel: Steel, designation: string, hardenC: number | undefined): TemperModel | undefined {
  const fits: readonly FittedCurve[] = fittedCurves(designation);
  const [first] = fits;
  if (first?.form === "cubic") return measuredModel(steel, first, hardenC);
  if (first?.form === "table") return tableModel(steel, fits, hardenC);
  return toolSteelModel(steel, designation);
}

/** The model of near kin: its band wider, and said. */
function lentModel(steel: Steel, lender: Lender, hardenC: number | undefined): TemperModel | undefined {
  const model = heldModel(steel, lender.designation, hardenC);
  if (model === undefined) return undefined;
  return {
    ...model,
    halfWidthAt: (celsius, parameter) => model.halfWidthAt(celsius, parameter) + lender.wider,
    basisAt: (parameter) => `${model.basisAt(parameter)}, lent`,
    assumptions: [...model.assumptions, lender.caution],
  };
}

function build(steel: Steel, hardenC: number | undefined): TemperModel {
  const own = attempt(() => heldModel(steel, steel.grade?.designation ?? "", hardenC));
  if (own !== undefined && !(own instanceof Refusal)) return own;
  // Away from the hardening temperature of its table, a stainless steel still has the relation of its kind.
  if (isMartensiticStainless(steel)) return stainlessModel(steel, hardenC);
  if (own instanceof Refusal) throw own;
  const lender = lenderOf(steel);
  const lent = lender === undefined ? undefined : lentModel(steel, lender, hardenC);
  if (lent !== undefined) return lent;
  refuseWithoutCurve(steel);
  return formulaModel(steel, hardenC);
}

/** Tempers over which what a sub-zero treatment gained fades, since the austenite would have turned anyway [°C]. */
const FADES = { lean: [200, 300], chromium: [450, 550] } as const;
const FADES_HOURS = 2;
const MUCH_CHROMIUM = 5;

/** A model of a steel that was cooled below room temperature straight after its quench. */
function cooledModel(model: TemperModel, hardenC: number | undefined, quenchToC: number): TemperModel {
  const { hrc, caution } = subZeroGain(model.steel, hardenC, quenchToC);
  if (caution === "") return model;
  const span = model.steel.composition.Cr > MUCH_CHROMIUM ? FADES.chromium : FADES.lean;
  const [from, to] = span.map((celsius) => hollomonJaffe(celsius, FADES_HOURS)) as [number, number];
  const share = (parameter: number) => Math.min(1, Math.max(0, (to - parameter) / (to - from)));
  const { curve } = model;
  const inside = [from, to].filter((parameter) => parameter > curve.from && parameter < curve.to);
  return {
    ...model,
    curve: {
      ...curve,
      breaks: [...curve.breaks, ...inside].sort((a, b) => a - b),
      hrcAt: (parameter) => curve.hrcAt(parameter) + hrc * share(parameter),
    },
    assumptions: [...model.assumptions, caution],
  };
}

type Prepared = Map<string, TemperModel>;

const prepared = new WeakMap<Steel, Prepared>();
/** Treatments remembered for one steel; a column rarely holds more. */
const REMEMBERED = 50;

/**
 * The hardness of a steel after temper, prepared once for each steel and treatment before the temper.
 *
 * @param steel - A grade or an analysis.
 * @param hardenC - Hardening temperature in °C.
 * @param quenchToC - Coldest temperature straight after the quench [°C].
 * @throws NotAvailable where no published curve and no formula covers the steel.
 */
export function temperModel(steel: Steel, hardenC?: number, quenchToC = ROOM_C): TemperModel {
  let models = prepared.get(steel);
  if (models === undefined) {
    models = new Map();
    prepared.set(steel, models);
  }
  const key = `${hardenC}|${quenchToC}`;
  const known = models.get(key);
  if (known !== undefined) return known;
  const model = cooledModel(build(steel, hardenC), hardenC, quenchToC);
  if (models.size >= REMEMBERED) models.clear();
  models.set(key, model);
  return model;
}
