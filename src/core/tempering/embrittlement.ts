import { temperatureText } from "../quantity-text";
import { relation } from "../relation";
import { type SteelAsked, steelAsked } from "../steel/asked";
import type { Steel } from "../steel/steel";

/** A span of tempers that costs toughness. */
export interface BrittleRange {
  /** Coolest temper of the span [°C]. */
  readonly low: number;
  /** Hottest temper of the span [°C]. */
  readonly high: number;
  /** What to do instead, in words. */
  readonly advice: string;
  /** Distance kept on its cool side [°C], where more than the usual is kept. */
  readonly clearBelow?: number;
  /** True where only slow cooling from the temper embrittles. */
  readonly bySlowCooling?: boolean;
}

/** Tempers that embrittle. */
export const EMBRITTLEMENT = relation({
  title: "Tempers that cost toughness",
  source: "embrittlement-ranges",
  locator: "ranges by family",
  evidence: "compiled",
  inputs: { temperC: { label: "temper", unit: "°C", min: null, max: null } },
  output: { label: "caution", unit: "text" },
  error: { size: 30, unit: "°C", kind: "sources differ by 30 to 50 °C about the ends" },
  note: "High-silicon range inferred from one steel of 1.6 % Si.",
});

const STAINLESS_CHROMIUM = 11;
const TOOL_CHROMIUM = 1.8;
const HIGH_SILICON = 1.2;

const CARBON_STEEL: BrittleRange = {
  low: 230,
  high: 370,
  advice: "choose a temper below or above it for a blade that takes blows",
};
const SILICON_STEEL: BrittleRange = { ...CARBON_STEEL, low: 350, high: 450 };
/** Hardened stainless is tempered at 370 °C at most (ASM Handbook, from memory): rust resistance falls first. */
const STAINLESS: BrittleRange = {
  low: 425,
  high: 600,
  clearBelow: 55,
  advice: "toughness and rust resistance suffer",
};
const REVERSIBLE: BrittleRange = {
  low: 375,
  high: 575,
  advice: "cool fast from the temper, slow cooling embrittles",
  bySlowCooling: true,
};
/** Impact of the S7 sheet dips here, 141 against 169 J. */
const S7_DIP: BrittleRange = { low: 370, high: 425, advice: "its impact figures dip here" };
/** Impact of the A2 sheet is lowest here, 39 against 56 J at 260 °C. */
const A2_DIP: BrittleRange = { low: 460, high: 500, advice: "its impact figures are lowest here" };

const OWN_RANGES: Readonly<Record<string, readonly BrittleRange[]>> = {
  S7: [S7_DIP],
  A2: [A2_DIP],
  X100CrMoV5: [A2_DIP],
};

/** Manganese, nickel and chromium together from which slow cooling matters; molybdenum and tungsten protect. */
function isReversible({ composition: c }: Steel): boolean {
  return c.Mn + c.Ni + c.Cr >= 1.2 && c.Mo < 0.15 && c.W < 0.3;
}

/**
 * The embrittlement ranges of a steel, by its own sheet or its family.
 *
 * @param steel - A grade or an analysis, or its name.
 * @returns Tempers [°C]
 * Limits: nothing is refused. Error and source: {@link EMBRITTLEMENT}.
 */
export function brittleRanges(steel: SteelAsked): readonly BrittleRange[] {
  steel = steelAsked(steel);
  const own = OWN_RANGES[steel.grade?.designation ?? ""];
  if (own !== undefined) return own;
  const { Cr, Si } = steel.composition;
  if (Cr >= STAINLESS_CHROMIUM && steel.family === "martensitic stainless") return [STAINLESS];
  if (Cr > TOOL_CHROMIUM) return [];
  const irreversible = Si >= HIGH_SILICON ? SILICON_STEEL : CARBON_STEEL;
  return isReversible(steel) ? [irreversible, REVERSIBLE] : [irreversible];
}

/** A range in words: "230 °C (446 °F) to 370 °C (698 °F)". */
export function rangeText({ low, high }: BrittleRange): string {
  return `${temperatureText(low)} to ${temperatureText(high)}`;
}

/**
 * The embrittlement caution of a temper; empty where there is none.
 *
 * @param steel - A grade or an analysis, or its name.
 * @param celsius - Temper [°C]
 * Limits: nothing is refused. Error and source: {@link EMBRITTLEMENT}.
 */
export function embrittlementCaution(steel: SteelAsked, celsius: number): string {
  steel = steelAsked(steel);
  return brittleRanges(steel)
    .filter(({ low, high }) => celsius >= low && celsius <= high)
    .map((range) => `embrittlement range ${rangeText(range)}: ${range.advice}`)
    .join("; ");
}

/** The ranges that a temper lies in, without advice; empty where there is none. */
export function brittleText(steel: Steel, celsius: number): string {
  return brittleRanges(steel)
    .filter(({ low, high }) => celsius >= low && celsius <= high)
    .map(
      (range) =>
        `brittle range ${rangeText(range)}${range.bySlowCooling ? " by slow cooling only: cool fast" : ""}`,
    )
    .join("; ");
}

/** Tempers on either side of an embrittlement range; `null` where the span ends first. */
export interface BlandTempers {
  readonly cooler: number | null;
  readonly hotter: number | null;
}

/** Distance kept from the end of a range, °C. */
const CLEAR_OF_RANGE = 5;

/** Whether a temper lies in a brittle range of a steel that no way of cooling avoids. */
export function isUnavoidable(steel: Steel, celsius: number): boolean {
  return brittleRanges(steel).some(
    (range) => !range.bySlowCooling && celsius >= range.low && celsius <= range.high,
  );
}

function rangeNear(steel: Steel, celsius: number): BrittleRange | undefined {
  return brittleRanges(steel).find(
    ({ low, high, clearBelow = CLEAR_OF_RANGE, bySlowCooling }) =>
      !bySlowCooling && celsius >= low - clearBelow && celsius <= high + CLEAR_OF_RANGE,
  );
}

/** Whether a temper lies in such a range or nearer to one than the distance that is kept. */
export function isNearBrittle(steel: Steel, celsius: number): boolean {
  return rangeNear(steel, celsius) !== undefined;
}

/** The range that makes a temper brittle, as "230 °C (446 °F) to 370 °C (698 °F)"; empty where none does. */
export function nearBrittleText(steel: Steel, celsius: number): string {
  const range = rangeNear(steel, celsius);
  return range === undefined ? "" : rangeText(range);
}

/** Whether a blade must cool fast from a temper. */
export function mustCoolFast(steel: Steel, celsius: number): boolean {
  return brittleRanges(steel).some(
    (range) => range.bySlowCooling && celsius >= range.low && celsius <= range.high,
  );
}

/**
 * The nearest tempers outside the embrittlement ranges that no way of cooling avoids.
 *
 * @param celsius - A temper.
 * @param span - Coolest and hottest temper that may be advised, °C.
 * @returns Both `null` for a temper that lies in no such range.
 */
export function blandTempers(
  steel: Steel,
  celsius: number,
  [coolest, hottest]: readonly [number, number],
): BlandTempers {
  const ranges = brittleRanges(steel);
  if (!isUnavoidable(steel, celsius)) return { cooler: null, hotter: null };
  const ends = ranges.flatMap(({ low, high, clearBelow = CLEAR_OF_RANGE }) => [
    low - clearBelow,
    high + CLEAR_OF_RANGE,
  ]);
  const bland = ends.filter((at) => !isUnavoidable(steel, at) && at >= coolest && at <= hottest);
  const below = bland.filter((at) => at < celsius);
  const above = bland.filter((at) => at > celsius);
  return {
    cooler: below.length === 0 ? null : Math.max(...below),
    hotter: above.length === 0 ? null : Math.min(...above),
  };
}
