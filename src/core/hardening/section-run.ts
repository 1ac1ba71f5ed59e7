import { BoundedMap } from "../bounded-map";
import { CONVERSION_TABLES, type ConversionTable } from "../hardness/conversion-tables";
import { convertHardness } from "../hardness/convert";
import type { Steel } from "../steel/steel";
import { type HeatTransferCoefficient, heatTransferOf, STILL_AIR } from "./heat-transfer";
import type { QuenchMedium } from "./quench-media";
import { checkShape, type SectionAustenite, sectionAustenite } from "./section-austenite";
import type { Coat } from "./section-equations";
import { type SectionGrid, type SectionShape, sectionGrid } from "./section-grid";
import { PearliteCells } from "./section-pearlite";
import { SectionCooling } from "./section-solver";
import { AUSTENITE } from "./section-steel";

// One section cooled once, its least known figures as they are told; runs already made are remembered.

/** A blade section and how it goes into the bath. */
export interface SectionInputs extends SectionShape {
  readonly steel: Steel;
  /** Medium of the quench. */
  readonly quench: QuenchMedium;
  /** Resistance of the clay above the line, thickness over conductivity, 0 and more [m²K/W]. */
  readonly clay: number;
  /** Where the thick clay starts above the edge, 0 and more [mm]. */
  readonly clayLineMm: number;
  /** Resistance of the coat below the line, 0 and more [m²K/W]. */
  readonly below: number;
  /** From the fire to the bath through air, 0 and more [s]. */
  readonly transferS: number;
  /** Factor on the heat transfer coefficient of the bath, above 0 [-]. */
  readonly bathFactor: number;
  /** When it leaves the fire [°C]; left out, the usual hardening temperature. */
  readonly startC: number | undefined;
}

/** Factors on what is least known: heat transfer coefficient, nose time, clay resistance. */
export interface Shift {
  readonly heatTransfer: number;
  readonly nose: number;
  readonly clay: number;
}

/** One run of a section. */
export interface SectionRun {
  /** At each column from the edge, mean over the thickness, 0 to 1 [-]. */
  readonly pearlite: readonly number[];
  /** Most pearlite at any place, 0 to 1 [-]. */
  readonly most: number;
  /** Hardness at each column from the edge [HV]. */
  readonly hv: readonly number[];
  /** Hardened from the edge to half martensite; the whole width where nothing falls under [mm]. */
  readonly depthMm: number;
  /** Edge at the moment it meets the bath [°C]. */
  readonly edgeC: number;
}

const LATENT_J_KG = 85_000;
const STEP_C = 10;
const LONGEST_S = 3600;

export const LOW_ALLOY = CONVERSION_TABLES[0] as ConversionTable;

/** Resistance on each column; a column that the line crosses has its share of both. */
function coatOf({ columns }: SectionGrid, inputs: SectionInputs, factor: number): Coat {
  const { clay, clayLineMm, below, widthMm } = inputs;
  const flank = Float64Array.from({ length: columns }, (_, column) => {
    const past = ((column + 1) / columns) * widthMm - clayLineMm;
    const share = Math.min(1, Math.max(0, (past * columns) / widthMm));
    return factor * (share * clay + (1 - share) * below);
  });
  return { flank, edge: factor * below, spine: factor * clay };
}

function meanOver(values: Float64Array, column: number, layers: number): number {
  let sum = 0;
  for (let layer = 0; layer < layers; layer += 1) sum += values[column * layers + layer] as number;
  return sum / layers;
}

/** Distance from the edge at which pearlite first reaches half, by straight line between columns. */
function depthTo(pearlite: readonly number[], widthMm: number): number {
  const first = pearlite.findIndex((fraction) => fraction >= 0.5);
  if (first < 0) return widthMm;
  if (first === 0) return 0;
  const before = pearlite[first - 1] as number;
  const share = (0.5 - before) / ((pearlite[first] as number) - before);
  return ((first - 0.5 + share) * widthMm) / pearlite.length;
}

interface Prepared {
  readonly inputs: SectionInputs;
  readonly austenite: SectionAustenite;
  readonly coefficient: HeatTransferCoefficient;
  readonly fullHv: number;
}

function prepare(inputs: SectionInputs): Prepared {
  checkShape(inputs.widthMm, inputs.spineMm, inputs.edgeMm);
  const coefficient = heatTransferOf(inputs.quench);
  const austenite = sectionAustenite(inputs.steel, inputs.quench, inputs.startC);
  return {
    inputs,
    austenite,
    coefficient,
    fullHv: convertHardness(austenite.fullHrc, "HRC", "HV", LOW_ALLOY),
  };
}

function cool({ inputs, austenite, coefficient, fullHv }: Prepared, shift: Shift): SectionRun {
  const grid = sectionGrid(inputs);
  const cells = grid.columns * grid.layers;
  const pearlite = new PearliteCells(cells, austenite.noseS * shift.nose, austenite.martensiteC);
  const cooling = new SectionCooling({
    grid,
    steel: AUSTENITE,
    coat: coatOf(grid, inputs, shift.clay),
    startC: austenite.startC,
    stages: [
      { coefficient: STILL_AIR, factor: 1, untilS: inputs.transferS },
      { coefficient, factor: inputs.bathFactor * shift.heatTransfer, untilS: LONGEST_S },
    ],
    pearlite,
    latentJkg: LATENT_J_KG,
    stepC: STEP_C,
  });
  cooling.run(inputs.transferS);
  const edgeC = meanOver(cooling.temperature, 0, grid.layers);
  cooling.run(LONGEST_S);
  const columns = Array.from({ length: grid.columns }, (_, column) => column);
  const fraction = columns.map((column) => meanOver(pearlite.fraction, column, grid.layers));
  return {
    pearlite: fraction,
    most: pearlite.fraction.reduce((most, value) => Math.max(most, value), 0),
    hv: columns.map(
      (column, index) =>
        (1 - (fraction[index] as number)) * fullHv + meanOver(pearlite.hardness, column, grid.layers),
    ),
    depthMm: depthTo(fraction, inputs.widthMm),
    edgeC,
  };
}

/** Runs remembered: rows of a sheet are often alike, and each takes a millisecond or two. */
const REMEMBERED = 300;
const runs = new BoundedMap<string, SectionRun>(REMEMBERED);
const steelNumbers = new WeakMap<Steel, number>();
let steelsSeen = 0;

/** A number for each steel: analyses of one name may differ. */
function numberOf(steel: Steel): number {
  const known = steelNumbers.get(steel);
  if (known !== undefined) return known;
  steelsSeen += 1;
  steelNumbers.set(steel, steelsSeen);
  return steelsSeen;
}

function keyOf(inputs: SectionInputs, { heatTransfer, nose, clay }: Shift): string {
  const values = Object.entries(inputs).map(([name, value]) =>
    name === "steel" || name === "quench" ? "" : `${name}=${value}`,
  );
  return [numberOf(inputs.steel), inputs.quench.word, ...values.sort(), heatTransfer, nose, clay].join("|");
}

/** Runs sections of the same inputs, each shift once. */
export function runsOf(inputs: SectionInputs): (shift: Shift) => SectionRun {
  let prepared: Prepared | undefined;
  return (shift) => {
    const key = keyOf(inputs, shift);
    const known = runs.get(key);
    if (known !== undefined) return known;
    prepared ??= prepare(inputs);
    const run = cool(prepared, shift);
    runs.set(key, run);
    return run;
  };
}
