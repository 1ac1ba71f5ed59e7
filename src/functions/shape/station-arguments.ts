import { quantityText } from "../../core/quantity-text";
import { InvalidValue } from "../../core/refusal";
import type { Grind } from "../../core/shape/grinds";
import type { Station } from "../../core/shape/stations";
import { optionalSeries, series } from "../parameters";
import { steelOrDensity } from "./density-argument";
import {
  bevelOptions,
  curveOptions,
  edgeOptions,
  flatOptions,
  INCHES_UNDER,
  length,
  optionalGrind,
  ribOptions,
  thicknessOptions,
  widthOptions,
} from "./lengths";

/** What the station arguments are read into. */
export interface StationLists {
  readonly x: readonly number[];
  readonly width: readonly number[];
  readonly thickness: readonly number[];
  readonly grind: Grind;
  readonly edge: readonly number[];
  readonly bevelHeight: readonly number[];
  readonly curve: readonly number[];
  readonly fullerWidth: readonly number[];
  readonly fullerDepth: readonly number[];
  readonly flatWidth?: readonly number[];
  readonly ribHeight?: readonly number[];
}

const isZero = (value: number) => value === 0;

/** A list left empty all along is a figure that was not given. */
function orNothing(list: readonly number[] = []): readonly number[] {
  return list.every(isZero) ? [] : list;
}

/** Thinner than any figure in inches that was meant as one, mm. */
const NO_SIZE = 0.01;

/** A blade may end in a thin point; one that is nowhere thick enough was typed in inches. */
function askInches({ thickness }: StationLists): void {
  const thickest = Math.max(...thickness);
  if (thickest < NO_SIZE || thickest >= INCHES_UNDER.thickness) return;
  throw new InvalidValue(
    `thickness: ${quantityText(thickest, "mm")} at the thickest station is too thin for a blade: did you mean inches? ` +
      'Write each with its unit, "0.25 in"',
  );
}

/** The stations of one blade from its lists. */
export function stationsOf(lists: StationLists): Station[] {
  askInches(lists);
  const [bevels, curves] = [orNothing(lists.bevelHeight), orNothing(lists.curve)];
  const [flats, ribs] = [orNothing(lists.flatWidth), orNothing(lists.ribHeight)];
  const { fullerWidth, fullerDepth } = lists;
  const hasFuller = !fullerWidth.every(isZero) || !fullerDepth.every(isZero);
  return lists.x.map((x, index) => ({
    x,
    grind: lists.grind,
    width: lists.width[index] ?? 0,
    thickness: lists.thickness[index] ?? 0,
    edge: lists.edge[index],
    bevelHeight: bevels[index],
    curve: curves[index],
    flatWidth: flats[index],
    ribHeight: ribs[index],
    fuller: hasFuller ? { width: fullerWidth[index] ?? 0, depth: fullerDepth[index] ?? 0 } : undefined,
  }));
}

const perStation = "One figure a station, or one for all.";

/** The arguments by which every function takes a measured blade, in their order. */
export const stationParameters = {
  x: series(
    length({
      label: "x",
      min: -10_000,
      help: "Distance of each station along the blade in mm, rising from heel to tip.",
    }),
  ),
  width: series(length({ ...widthOptions, min: 0, help: `${widthOptions.help} ${perStation}` })),
  thickness: series(length({ ...thicknessOptions, min: 0, help: `${thicknessOptions.help} ${perStation}` })),
  grind: optionalGrind,
  edge: optionalSeries({ ...edgeOptions, fallback: 0, help: `${edgeOptions.help} ${perStation}` }),
  density: steelOrDensity,
  bevelHeight: optionalSeries({
    ...length({ ...bevelOptions, min: 0, help: `${bevelOptions.help} ${perStation}` }),
    fallback: 0,
  }),
  curve: optionalSeries({
    ...length({ ...curveOptions, min: 0, help: `${curveOptions.help} ${perStation}` }),
    fallback: 0,
  }),
  fullerWidth: optionalSeries({
    ...length({
      label: "fuller width",
      min: 0,
      help: `Rim to rim in mm, one fuller on each side. ${perStation}`,
    }),
    fallback: 0,
  }),
  fullerDepth: optionalSeries({
    ...length({
      label: "fuller depth",
      min: 0,
      help: `Below a straight edge laid over the rims, in mm. ${perStation}`,
    }),
    fallback: 0,
  }),
};

/** What hexagonal and T-back sections need besides. They stand last in every function, so that no argument moved. */
export const flatParameters = {
  flatWidth: optionalSeries({
    ...length({ label: flatOptions.label, min: 0, help: `${flatOptions.help} ${perStation}` }),
    fallback: 0,
  }),
  ribHeight: optionalSeries({
    ...length({ label: ribOptions.label, min: 0, help: `${ribOptions.help} ${perStation}` }),
    fallback: 0,
  }),
};
