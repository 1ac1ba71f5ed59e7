import { InvalidValue, NotAvailable } from "../refusal";
import { crossing } from "../root";
import { hardenedDepth, type SectionInputs } from "./section-quench";

/** The calibration that makes the calculation meet one measured blade. */
export interface SectionFit {
  /** Clay resistance above the line: fitted where one was given, else 0 [m²K/W]. */
  readonly clay: number;
  /** Factor on the bath: fitted where there is no clay, else as given [-]. */
  readonly bathFactor: number;
  /** Calculated less measured depth [mm]. */
  readonly misfitMm: number;
}

const CLAY_SPAN = [1e-5, 0.02] as const;
const BATH_SPAN = [0.2, 5] as const;
/** A fitted value is found to a ten-thousandth of itself, or until the depth is met to this many mm. */
const CLOSE_SHARE = 1e-4;
const CLOSE_MM = 1e-4;

function mm(value: number): string {
  return `${value.toFixed(1)} mm`;
}

interface Knob {
  readonly name: string;
  /** Values that harden least and most. */
  readonly shallow: number;
  readonly deep: number;
  readonly depthFor: (value: number) => number;
}

function knobOf(inputs: SectionInputs): Knob {
  if (inputs.clay > 0) {
    return {
      name: "clay resistance from 0.00001 to 0.02 m²K/W",
      shallow: CLAY_SPAN[1],
      deep: CLAY_SPAN[0],
      depthFor: (clay) => hardenedDepth({ ...inputs, clay }),
    };
  }
  return {
    name: "bath factor from 0.2 to 5",
    shallow: BATH_SPAN[0],
    deep: BATH_SPAN[1],
    depthFor: (bathFactor) => hardenedDepth({ ...inputs, bathFactor }),
  };
}

function checkReach({ name, shallow, deep, depthFor }: Knob, measuredMm: number): void {
  const [least, most] = [depthFor(shallow), depthFor(deep)];
  if (measuredMm >= least && measuredMm <= most) return;
  throw new NotAvailable(
    `no ${name} gives ${mm(measuredMm)}: they give ${mm(least)} to ${mm(most)}; check steel, section, clay line and bath`,
  );
}

/** The value that gives the depth, sought on a logarithmic scale. */
function search({ shallow, deep, depthFor }: Knob, measuredMm: number): number {
  const excess = (log: number) => depthFor(Math.exp(log)) - measuredMm;
  return Math.exp(crossing(excess, Math.log(shallow), Math.log(deep), CLOSE_SHARE, CLOSE_MM));
}

/**
 * Fits the clay resistance, or without clay the bath factor, to the hardened depth of one blade.
 *
 * @param inputs - The section as it was quenched: widths [mm], temperatures [°C], clay [m²K/W]
 * @param measuredMm - Depth to half martensite from the edge, as etched or traversed [mm]
 * @returns Clay resistance [m²K/W] or bath factor, and the misfit [mm]
 * @throws InvalidValue where the depth is not inside the section; NotAvailable where no value
 *   between 0.00001 and 0.02 m²K/W, or a bath factor between 0.2 and 5, gives it.
 * Error and source: {@link SECTION_QUENCH_MODEL}.
 */
export function fitSection(inputs: SectionInputs, measuredMm: number): SectionFit {
  if (measuredMm >= inputs.widthMm) {
    throw new InvalidValue(
      `measured depth ${mm(measuredMm)} is not inside a width of ${mm(inputs.widthMm)}: a blade hard to the spine fixes nothing`,
    );
  }
  const knob = knobOf(inputs);
  checkReach(knob, measuredMm);
  const fitted = search(knob, measuredMm);
  const misfitMm = knob.depthFor(fitted) - measuredMm;
  if (inputs.clay > 0) return { clay: fitted, bathFactor: inputs.bathFactor, misfitMm };
  return { clay: 0, bathFactor: fitted, misfitMm };
}
