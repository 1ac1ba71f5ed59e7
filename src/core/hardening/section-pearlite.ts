import { relation } from "../relation";

/** Growth of pearlite on cooling. */
export const PEARLITE = relation({
  title: "Pearlite formed on cooling, by additive growth from a nose time",
  source: "eutectoid-cooling-rates",
  locator: "exponent 4, set by 35 and 140 °C/s between all pearlite and none",
  evidence: "fitted",
  inputs: { nose: { label: "pearlite nose time", unit: "s", min: 0.2, max: 30 } },
  output: { label: "pearlite", unit: "%" },
  error: { size: 35, unit: "%", kind: "one standard deviation of the nose time" },
  note: "Pearlite only: no bainite, so steels with molybdenum and cooling in air are refused. Latent heat is counted.",
});

const EUTECTOID_C = 727;
const ACTIVATION_K = 27_500 / 1.987;
/** Progress at which one per cent has formed, with exponent 4. */
const ONE_PERCENT = (-Math.log(0.99)) ** 0.25;
const DEGREES = EUTECTOID_C + 1;
/** Below this progress less than one part in a million has formed. */
const NEGLIGIBLE = 0.03;

/** Driving force against diffusion, from the undercooling. */
function growth(celsius: number): number {
  return (EUTECTOID_C - celsius) ** 3 * Math.exp(-ACTIVATION_K / (celsius + 273.15));
}

const fastest = Math.max(...Array.from({ length: DEGREES }, (_, celsius) => growth(celsius)));
/** Rate for each whole °C, 1 at the nose. */
const RATES = Float64Array.from({ length: DEGREES + 1 }, (_, celsius) =>
  celsius < EUTECTOID_C ? growth(celsius) / fastest : 0,
);

function rateAt(celsius: number): number {
  if (celsius <= 0 || celsius >= EUTECTOID_C) return 0;
  const floor = Math.floor(celsius);
  const low = RATES[floor] as number;
  return low + (celsius - floor) * ((RATES[floor + 1] as number) - low);
}

/** Vickers hardness of pearlite formed at a temperature: 380 at 550 °C, 250 at 650 °C, recalled. */
function pearliteHardness(celsius: number): number {
  return 180 + 1.35 * (700 - celsius);
}

/** How far one place of a section has transformed. */
export class PearliteCells {
  readonly fraction: Float64Array;
  /** Sum of the hardness of what formed, each part weighted with its fraction, HV. */
  readonly hardness: Float64Array;
  private readonly progress: Float64Array;

  /**
   * @param cells - Number of places.
   * @param noseS - Time to one per cent pearlite at the nose, s.
   * @param martensiteC - Start of martensite in °C, where pearlite stops.
   */
  constructor(
    cells: number,
    private readonly noseS: number,
    private readonly martensiteC: number,
  ) {
    this.fraction = new Float64Array(cells);
    this.hardness = new Float64Array(cells);
    this.progress = new Float64Array(cells);
  }

  /** True where nothing more can form. */
  isDone(cell: number, celsius: number): boolean {
    return celsius < this.martensiteC || (this.fraction[cell] as number) > 0.9999;
  }

  /** Moves one place on at a temperature; gives the fraction newly formed. */
  advance(cell: number, celsius: number, seconds: number): number {
    if (celsius < this.martensiteC || celsius >= EUTECTOID_C) return 0;
    const progress = (this.progress[cell] as number) + (ONE_PERCENT / this.noseS) * rateAt(celsius) * seconds;
    this.progress[cell] = progress;
    if (progress < NEGLIGIBLE) return 0;
    const before = this.fraction[cell] as number;
    const square = progress * progress;
    const formed = -Math.expm1(-square * square) - before;
    this.fraction[cell] = before + formed;
    this.hardness[cell] = (this.hardness[cell] as number) + formed * pearliteHardness(celsius);
    return formed;
  }
}
