import { quantityText } from "../quantity-text";
import { InvalidValue, NotAvailable } from "../refusal";
import { checkRange, relation } from "../relation";
import { carbonOf } from "../steel/carbon";
import type { Steel } from "../steel/steel";
import { notInAir } from "./air-hardening";
import { CARBIDE_CARBON, dissolvedAt } from "./dissolved";
import { usualHardening } from "./hardening-temperature";
import { martensiteStart } from "./martensite";
import { noseOf, solutionAt } from "./max-section";
import type { QuenchMedium } from "./quench-media";
import { quenchedHardness } from "./quenched";
import { PEARLITE } from "./section-pearlite";

/** The section calculation as a whole. */
export const SECTION_QUENCH_MODEL = relation({
  title: "Hardness across a section after the quench",
  source: "section-quench-model",
  locator: "finite volumes, 30 columns and 3 layers",
  evidence: "compiled",
  inputs: {
    carbon: { label: "carbon in austenite", unit: "%", min: 0.45, max: 1.15 },
    // Above this molybdenum slows pearlite so much that bainite comes first; common practice, no source.
    molybdenum: { label: "molybdenum", unit: "%", min: 0, max: 0.15 },
  },
  output: { label: "hardness", unit: "HRC" },
  error: {
    size: null,
    unit: "HRC",
    kind: "the band shown covers 90 %; about 10 HRC where martensite turns to pearlite, 3 mm on a clay line not calibrated",
  },
  note: "Shape of the profile and order of sections, baths and steels; not a hardness for the transition zone.",
});

/** What the quench finds in the steel. */
export interface SectionAustenite {
  readonly startC: number;
  /** Hardness where everything turns to martensite, HRC. */
  readonly fullHrc: number;
  readonly martensiteC: number;
  readonly noseS: number;
}

function checkBainite(steel: Steel, quench: QuenchMedium): void {
  const isLiquid = quench.kind === "oil" || quench.kind === "water";
  if (!isLiquid && steel.family !== "plain carbon") {
    throw new NotAvailable(
      `${notInAir(steel, quench.word)}; what bainite forms is not calculated: only plain carbon steel is worked outside liquids`,
    );
  }
  const molybdenum = steel.composition.Mo;
  const { max } = SECTION_QUENCH_MODEL.inputs.molybdenum;
  if (molybdenum > max) {
    throw new NotAvailable(
      `${steel.name} holds ${molybdenum} % Mo: above ${max} % bainite comes before pearlite, which this calculation does not know`,
    );
  }
}

/**
 * The austenite that goes into the bath.
 *
 * @param startC - Temperature at the start in °C; left out, the usual hardening temperature.
 * @throws NotAvailable where bainite must be expected, outside 0.45 to 1.15 % C in solution, for a
 *   pearlite nose outside 0.2 to 30 s, and where the hardness of the martensite is not known.
 */
export function sectionAustenite(steel: Steel, quench: QuenchMedium, startC?: number): SectionAustenite {
  checkBainite(steel, quench);
  const start = startC ?? usualHardening(steel).celsius;
  const nose = noseOf(steel, start).seconds;
  checkRange(PEARLITE, "nose", nose);
  const whole = startC !== undefined && carbonOf(steel) < CARBIDE_CARBON;
  const inSolution = whole ? dissolvedAt(steel, start) : solutionAt(steel, start);
  checkRange(SECTION_QUENCH_MODEL, "carbon", inSolution.carbon);
  const austenite = { ...steel.composition, C: inSolution.carbon, Cr: inSolution.chromium };
  return {
    startC: start,
    fullHrc: quenchedHardness(steel, startC).hrc,
    martensiteC: martensiteStart(austenite),
    noseS: nose,
  };
}

/** Refuses a shape that is no section. */
export function checkShape(widthMm: number, spineMm: number, edgeMm: number): void {
  if (edgeMm > spineMm) {
    throw new InvalidValue(
      `edge ${quantityText(edgeMm, "mm")} is thicker than spine ${quantityText(spineMm, "mm")}: give the spine first, then the edge as it goes into the quench`,
    );
  }
  if (spineMm > 2 * widthMm) {
    throw new InvalidValue(
      `spine ${quantityText(spineMm, "mm")} against a width of ${quantityText(widthMm, "mm")} is no blade: check the order, width first`,
    );
  }
}
