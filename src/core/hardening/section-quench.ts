import { convertHardness, correspondence, readOff } from "../hardness/convert";
import { airHardeningMm } from "./air-hardening";
import { bathOf, MAX_PLATE, maxSection } from "./max-section";
import { quenchedHardness } from "./quenched";
import { checkShape, SECTION_QUENCH_MODEL } from "./section-austenite";
import { LOW_ALLOY, runsOf, type SectionInputs, type SectionRun, type Shift } from "./section-run";

export type { SectionInputs, SectionRun, Shift } from "./section-run";

/** Likely case with the two ends of a band that covers 90 %. */
export interface SectionBand {
  /** The softer end of the band. */
  readonly soft: SectionRun;
  readonly likely: SectionRun;
  /** The harder end of the band. */
  readonly hard: SectionRun;
  /** Edge to spine [mm]. */
  readonly widthMm: number;
}

const NINETY = 1.645;
/** One standard deviation of the logarithm: heat transfer coefficient, nose time, clay. */
const SPREAD = { heatTransfer: 0.25, nose: 0.35, clay: 0.4 };
/** How much of the whole band each brings, squares summing to one: bare, the cooling rate follows heat transfer and nose alike; under clay heat transfer hardly counts. */
const BARE = { heatTransfer: 0.58, nose: 0.81, clay: 0 };
const CLAYED = { heatTransfer: 0.09, nose: 0.74, clay: 0.67 };
const LIKELY: Shift = { heatTransfer: 1, nose: 1, clay: 1 };

function shifted(clay: number, sign: 1 | -1): Shift {
  const share = clay > 0 ? CLAYED : BARE;
  const factor = (key: keyof Shift, towards: number) => Math.exp(towards * NINETY * share[key] * SPREAD[key]);
  return {
    heatTransfer: factor("heatTransfer", sign),
    nose: factor("nose", sign),
    clay: factor("clay", -sign),
  };
}

/** Half-width of a fully hardened section: the hardness as quenched is good to this [HV], about 3 HRC. */
const FULL_BAND_HV = 70;

/**
 * True where a section hardens through by the figures of the plate: air-hardening steels under any coat,
 * and steels whose bainite the calculation does not know where they are bare and well under the limit.
 */
function hardensThrough({ steel, quench, spineMm, clay, below }: SectionInputs): boolean {
  const airMm = airHardeningMm(steel);
  if (airMm !== undefined) return spineMm <= airMm;
  const isBare = clay === 0 && below === 0;
  if (!isBare || steel.composition.Mo <= SECTION_QUENCH_MODEL.inputs.molybdenum.max) return false;
  const { fullyHardMm } = maxSection(steel, bathOf(quench));
  return spineMm <= fullyHardMm / (MAX_PLATE.error.size ?? 1);
}

function fullyHard({ steel, startC, widthMm }: SectionInputs): SectionBand {
  const { hrc, hardenC } = quenchedHardness(steel, startC);
  const run = (shift: number): SectionRun => ({
    pearlite: Array<number>(FULL_COLUMNS).fill(0),
    most: 0,
    hv: Array<number>(FULL_COLUMNS).fill(convertHardness(hrc, "HRC", "HV", LOW_ALLOY) + shift),
    depthMm: widthMm,
    edgeC: startC ?? hardenC,
  });
  return { soft: run(-FULL_BAND_HV), likely: run(0), hard: run(FULL_BAND_HV), widthMm };
}

/** Columns of the report of such a section, as many as the calculation gives. */
const FULL_COLUMNS = 30;

/**
 * Hardness across a section after the quench, with a band that covers 90 %.
 *
 * @param inputs - The section as it is quenched: widths [mm], temperatures [°C], transfer [s], clay [m²K/W]
 * @returns Hardness [HRC] from edge to spine [mm]: at worst, likely, at best.
 * @throws InvalidValue for a shape that is no section; NotAvailable for a bath without figures and
 *   where `sectionAustenite` refuses.
 * Error and source: {@link SECTION_QUENCH_MODEL}, {@link PEARLITE}.
 */
export function quenchSection(inputs: SectionInputs): SectionBand {
  checkShape(inputs.widthMm, inputs.spineMm, inputs.edgeMm);
  if (hardensThrough(inputs)) return fullyHard(inputs);
  const run = runsOf(inputs);
  return {
    likely: run(LIKELY),
    soft: run(shifted(inputs.clay, -1)),
    hard: run(shifted(inputs.clay, 1)),
    widthMm: inputs.widthMm,
  };
}

/** One run with the least known figures shifted; 1 leaves each as it is. */
export function quenchShifted(inputs: SectionInputs, shift: Shift): SectionRun {
  return runsOf(inputs)(shift);
}

/**
 * Likely hardened depth of a section, worked out without the band around it.
 *
 * @param inputs - The section as it is quenched: widths [mm], temperatures [°C], clay [m²K/W]
 * @returns Depth to half martensite from the edge [mm]
 * @throws as `quenchSection` does.
 * Error and source: {@link SECTION_QUENCH_MODEL}.
 */
export function hardenedDepth(inputs: SectionInputs): number {
  return quenchShifted(inputs, LIKELY).depthMm;
}

/** Rockwell C of a Vickers hardness, `undefined` below the scale. */
export function hrcOf(hv: number): number | undefined {
  return readOff(correspondence(LOW_ALLOY, "HV", "HRC"), hv);
}
