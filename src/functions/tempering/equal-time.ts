import { InvalidValue } from "../../core/refusal";
import {
  checkParameterRange,
  equivalentTemperature,
  equivalentTime,
  HOLLOMON_JAFFE,
} from "../../core/tempering/hollomon-jaffe";
import { rowFunction, scalarFunction } from "../declare";
import { number, rangeParameter } from "../parameters";
import { TEMPER_SPAN, TIME_SPAN, toTenth } from "./treatment";

export const SAME_TEMPER = scalarFunction({
  name: "SAME_TEMPER",
  summary: "Temper that softens as much in another time.",
  parameters: {
    celsius: number({ label: "C", ...TEMPER_SPAN, help: "Temper in °C." }),
    hours: number({ label: "hours", ...TIME_SPAN, help: "Its time in hours." }),
    newHours: number({ label: "new hours", ...TIME_SPAN, help: "The other time in hours." }),
  },
  result: { label: "temper", unit: "°C" },
  relations: [HOLLOMON_JAFFE],
  compute: ({ celsius, hours, newHours }) => {
    checkParameterRange(celsius, hours);
    checkParameterRange(celsius, newHours);
    return toTenth(equivalentTemperature(celsius, hours, newHours));
  },
});

type Cells = readonly (number | undefined)[];

function together(tempers: Cells, hours: Cells, referenceC: number): number {
  if (hours.length !== 1 && hours.length !== tempers.length) {
    throw new InvalidValue(
      `${tempers.length} tempers but ${hours.length} times given: give one time, or one a temper`,
    );
  }
  const pairs = tempers.flatMap((celsius, i) => {
    const time = hours.length === 1 ? hours[0] : hours[i];
    if (celsius === undefined) return [];
    if (time === undefined) throw new InvalidValue(`temper ${i + 1} has no time: give its hours`);
    return [{ celsius, hours: time }];
  });
  if (pairs.length === 0) throw new InvalidValue("no temper given: give tempers in °C and their hours");
  return equivalentTime(pairs, referenceC);
}

/** A row of one figure: ranges belong whole to one answer. */
export const TEMPER_TIME_AT = rowFunction({
  name: "TEMPER_TIME_AT",
  summary: "Several tempers as hours at one temperature that soften as much as all of them.",
  parameters: {
    tempers: rangeParameter(number({ label: "C list", ...TEMPER_SPAN, help: "Tempers in °C, one a cell." })),
    hours: rangeParameter(
      number({
        label: "hours list",
        ...TIME_SPAN,
        help: "Time of each in hours, in the same order; one time serves all.",
      }),
    ),
    referenceC: number({ label: "reference C", ...TEMPER_SPAN, help: "The temperature that counts, in °C." }),
  },
  result: [{ label: "time", unit: "h" }],
  relations: [HOLLOMON_JAFFE],
  compute: ({ tempers, hours, referenceC }) => [Number(together(tempers, hours, referenceC).toPrecision(3))],
});
