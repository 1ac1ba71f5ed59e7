import { InvalidValue } from "../../core/refusal";
import { type Coupon, couponRelations, fitCoupons } from "../../core/tempering/coupons";
import { temperingRelations } from "../../core/tempering/relations";
import { rowFunction } from "../declare";
import { number, numberOrNothing, optionalNumber, rangeParameter } from "../parameters";
import { steel } from "../steel-argument";
import { HRC_SPAN, hardenC, TEMPER_SPAN, TIME_SPAN, toTenth } from "./treatment";

type Cells = readonly (number | undefined)[];

const FALLBACK_HOURS = 2;

function hoursOf(hours: Cells, index: number): number {
  const given = hours.filter((value) => value !== undefined);
  return (hours.length === 1 || given.length <= 1 ? given[0] : hours[index]) ?? FALLBACK_HOURS;
}

function couponAt(tempers: Cells, readings: Cells, hours: Cells, index: number): Coupon | null {
  const [celsius, hrc] = [tempers[index], readings[index]];
  if (celsius === undefined && hrc === undefined) return null;
  if (celsius === undefined)
    throw new InvalidValue(`coupon ${index + 1} has a reading but no temper: give its temper in °C`);
  if (hrc === undefined)
    throw new InvalidValue(`coupon ${index + 1} has a temper but no reading: give what it reads in HRC`);
  return { celsius, hrc, hours: hoursOf(hours, index) };
}

/** Coupons in the order of the cells; a pair of empty cells is none. */
function couponsOf(tempers: Cells, readings: Cells, hours: Cells): Coupon[] {
  if (tempers.length !== readings.length) {
    throw new InvalidValue(
      `${tempers.length} tempers but ${readings.length} readings given: give one reading a temper`,
    );
  }
  if (hours.length > 1 && hours.length !== tempers.length) {
    throw new InvalidValue(
      `${tempers.length} tempers but ${hours.length} times given: give one time, or one a temper`,
    );
  }
  const coupons = tempers.map((_, index) => couponAt(tempers, readings, hours, index));
  const filled = coupons.filter((coupon): coupon is Coupon => coupon !== null);
  if (filled.length === 0)
    throw new InvalidValue("no coupon given: give tempers in °C and what they read in HRC");
  return filled;
}

export const TEMPER_FIT = rowFunction({
  name: "TEMPER_FIT",
  summary:
    "The shop's own coupons weighed with the published curve: a known temper and reading for TEMPER_FOR, and the ± that the coupons earn.",
  parameters: {
    steel,
    tempers: rangeParameter(
      number({ label: "temper C", ...TEMPER_SPAN, help: "Tempers of the coupons in °C, one a cell." }),
    ),
    readings: rangeParameter(
      number({ label: "HRC", ...HRC_SPAN, help: "What each coupon reads in HRC, in the same order." }),
    ),
    hours: rangeParameter(
      optionalNumber({
        label: "hours",
        ...TIME_SPAN,
        fallback: FALLBACK_HOURS,
        help: "Time in all in hours, one for every coupon or one each; the first is that of the plan.",
      }),
    ),
    atC: numberOrNothing({
      label: "at C",
      ...TEMPER_SPAN,
      help: "Temper about which the run is planned, in °C; where left out, the mean of the coupons.",
    }),
    hardenC,
  },
  result: [
    { label: "known C", unit: "°C" },
    { label: "known HRC", unit: "HRC" },
    { label: "shift", unit: "HRC" },
    { label: "±", unit: "HRC" },
    { label: "readings", unit: "" },
    { label: "worst misfit", unit: "HRC" },
    { label: "slope, a 100 °C", unit: "HRC" },
  ],
  relations: (steel) => couponRelations(steel, temperingRelations(null)),
  compute: ({ steel, tempers, readings, hours, atC, hardenC }) => {
    const coupons = couponsOf(tempers, readings, hours);
    const fit = fitCoupons(steel, coupons, { hours: hoursOf(hours, 0), atC, hardenC });
    return [
      Math.round(fit.knownC * 10) / 10,
      Math.round(fit.knownHrc * 100) / 100,
      Math.round(fit.shift * 100) / 100,
      toTenth(fit.halfWidth),
      fit.readings,
      toTenth(fit.worstMisfit),
      Math.round(fit.slope * 100) / 100,
    ];
  },
});
