import { quantityText } from "../quantity-text";
import { InvalidValue } from "../refusal";
import { relation } from "../relation";
import {
  bladeProperties,
  type ResolvedStation,
  resolveStations,
  type Station,
  sectionBetween,
} from "../shape/stations";
import { type SectionProperties, sectionProperties } from "./cross-section";

/** Sections of a blade as a beam. */
export const BLADE_SECTION = relation({
  title: "Second moment of area of a blade's cross-section",
  source: "plane-geometry",
  locator: "∫ y² dA about the centroid",
  evidence: "standard",
  inputs: { stations: { label: "stations", unit: "", min: 2, max: null } },
  output: { label: "second moment", unit: "mm⁴" },
  error: { size: null, unit: "mm⁴", kind: "exact for the outline described; 1 % of thickness is 3 % of it" },
  note:
    "Every dimension varies in a straight line between stations. A fuller lies in the middle of its face, on a full " +
    "wedge along the spine. A chisel grind also twists a little as it bends, which is not counted.",
});

/** A blade between its first and last station. */
export interface Blade {
  /** Places of the stations [mm]. */
  readonly places: readonly number[];
  /** Place of the first station [mm]. */
  readonly start: number;
  /** Place of the last station [mm]. */
  readonly end: number;
  /** Of the blade [g]. */
  readonly mass: number;
  /** Of its steel [g/cm³]. */
  readonly density: number;
  /** Its section at a place from the first to the last station [mm]. */
  readonly at: (x: number) => BladeSection;
}

/** The section at a place. */
export interface BladeSection extends SectionProperties {
  /** [mm] */
  readonly width: number;
  /** [mm] */
  readonly thickness: number;
}

/** Under this a blade is no beam [mm] */
const THINNEST = 0.01;

/** Refuses a blade that is nowhere as thick or wide as a hair: figures in another unit, or cells that hold next to nothing. */
function checkSubstance(stations: readonly Station[]): void {
  const widest = Math.max(...stations.map(({ width }) => width));
  const thickest = Math.max(...stations.map(({ thickness }) => thickness));
  if (widest >= THINNEST && thickest >= THINNEST) return;
  throw new InvalidValue(
    `the blade is at most ${quantityText(widest, "mm")} wide and ${quantityText(thickest, "mm")} thick: ` +
      `give width and thickness in mm, from ${quantityText(THINNEST, "mm")} somewhere`,
  );
}

/** True where there is metal enough to bend or to hold a load. */
export function hasSubstance({ width, thickness, secondMoment }: BladeSection): boolean {
  return width >= THINNEST && thickness >= THINNEST && secondMoment > 0;
}

/** The station before a place and the one after it. */
function panelAt(resolved: readonly ResolvedStation[], x: number): [ResolvedStation, ResolvedStation] {
  let low = 0;
  let high = resolved.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((resolved[middle] as ResolvedStation).x <= x) low = middle;
    else high = middle;
  }
  return [resolved[low] as ResolvedStation, resolved[high] as ResolvedStation];
}

/**
 * A blade as a beam: its section at every place between heel and tip.
 *
 * @param stations - From heel to tip, at least two, all of one grind [mm]
 * @param density - 1 to 25 [g/cm³]; of a steel `densityOf(steel).value`
 * @throws InvalidValue for stations out of order or a section that cannot be, naming the place.
 * Error and source: {@link BLADE_SECTION}.
 */
export function bladeOf(stations: readonly Station[], density: number): Blade {
  const { mass } = bladeProperties(stations, density);
  checkSubstance(stations);
  const resolved = resolveStations(stations);
  const places = resolved.map(({ x }) => x);
  const at = (x: number) => {
    const [before, after] = panelAt(resolved, x);
    const { outline, fuller } = sectionBetween(before, after, (x - before.x) / (after.x - before.x));
    return {
      width: outline.width,
      thickness: outline.thickness,
      ...sectionProperties(outline, fuller),
    };
  };
  return { places, start: places[0] as number, end: places.at(-1) as number, mass, density, at };
}

/** Refuses a place that is not on the blade. */
export function checkOnBlade({ start, end }: Blade, label: string, x: number): void {
  if (x >= start && x <= end) return;
  throw new InvalidValue(
    `${label}: ${quantityText(x, "mm")} given; give a place on the blade, ` +
      `${quantityText(start, "mm")} to ${quantityText(end, "mm")}`,
  );
}

/**
 * Places that divide a stretch of blade into steps, a station always between two of them, so that nothing
 * within a step has a kink.
 *
 * @param from - [mm]
 * @param to - [mm]
 * @param steps - About how many; short panels between stations get two at least.
 */
export function stepsAlong(places: readonly number[], from: number, to: number, steps: number): number[] {
  const inside = places.filter((x) => x > from && x < to);
  const ends = [from, ...inside, to];
  return ends.slice(1).reduce<number[]>(
    (all, end, index) => {
      const start = ends[index] as number;
      const count = Math.max(2, Math.round((steps * (end - start)) / (to - from)));
      for (let step = 1; step <= count; step += 1) {
        all.push(step === count ? end : start + ((end - start) * step) / count);
      }
      return all;
    },
    [from],
  );
}

/** The section at one place. */
export interface BladeAt extends BladeSection {
  /** From the place to the tip [g] */
  readonly massToTip: number;
}

/** Stations of the part of a blade beyond a place. */
function beyond(stations: readonly Station[], x: number): readonly Station[] {
  const first = stations.findIndex((station) => station.x > x);
  const [before, after] = [stations[first - 1] as Station, stations[first] as Station];
  const share = (x - before.x) / (after.x - before.x);
  const mix = (a: number | undefined, b: number | undefined) =>
    a === undefined || b === undefined ? undefined : a + (b - a) * share;
  const here: Station = {
    x,
    grind: before.grind,
    width: before.width + (after.width - before.width) * share,
    thickness: before.thickness + (after.thickness - before.thickness) * share,
    edge: mix(before.edge, after.edge),
    bevelHeight: mix(before.bevelHeight, after.bevelHeight),
    curve: mix(before.curve, after.curve),
    flatWidth: mix(before.flatWidth, after.flatWidth),
    ribHeight: mix(before.ribHeight, after.ribHeight),
    fuller: {
      width: mix(before.fuller?.width ?? 0, after.fuller?.width ?? 0) as number,
      depth: mix(before.fuller?.depth ?? 0, after.fuller?.depth ?? 0) as number,
    },
  };
  return [here, ...stations.slice(first)];
}

/**
 * Width, thickness, area, second moments and the mass from there to the tip, at any place of a blade.
 *
 * @param x - Place in the x of the stations [mm]
 * @param stations - From heel to tip [mm]
 * @param density - 1 to 25 [g/cm³]; of a steel `densityOf(steel).value`
 * @returns Sizes [mm], area [mm²], second moments [mm⁴], mass [g]
 * @throws InvalidValue for a place off the blade, stations out of order or a section that cannot be.
 * Error and source: {@link BLADE_SECTION}.
 */
export function bladeAt(x: number, stations: readonly Station[], density: number): BladeAt {
  const blade = bladeOf(stations, density);
  checkOnBlade(blade, "at", x);
  const massToTip = x === blade.end ? 0 : bladeProperties(beyond(stations, x), density).mass;
  return { ...blade.at(x), massToTip };
}
