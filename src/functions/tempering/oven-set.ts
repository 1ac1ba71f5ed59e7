import { InvalidValue } from "../../core/refusal";
import { OVEN_CORRECTION, type OvenCheck, ovenSetting } from "../../core/tempering/oven";
import { rowFunction } from "../declare";
import { number, rangeParameter } from "../parameters";
import { TEMPER_SPAN, temperC } from "./treatment";

type Cells = readonly (number | undefined)[];

function checksOf(settings: Cells, measured: Cells): OvenCheck[] {
  if (settings.length !== measured.length) {
    throw new InvalidValue(
      `${settings.length} settings but ${measured.length} measured temperatures given: give one each`,
    );
  }
  return settings.flatMap((setC, i) => {
    const measuredC = measured[i];
    if (setC === undefined && measuredC === undefined) return [];
    if (setC === undefined || measuredC === undefined) {
      throw new InvalidValue(`check ${i + 1} is half filled: give the setting and what was measured, in °C`);
    }
    return [{ setC, measuredC }];
  });
}

export const OVEN_SET = rowFunction({
  name: "OVEN_SET",
  summary: "What to set the oven to for a temperature beside the blade, from checks with a thermometer.",
  parameters: {
    temperC,
    settings: rangeParameter(
      number({ label: "set C", ...TEMPER_SPAN, help: "Settings that were checked in °C, one a cell." }),
    ),
    measured: rangeParameter(
      number({
        label: "measured C",
        ...TEMPER_SPAN,
        help: "What a thermometer beside the blade read at each, in °C.",
      }),
    ),
  },
  result: [{ label: "setting", unit: "°C" }],
  relations: [OVEN_CORRECTION],
  compute: ({ temperC, settings, measured }) => [
    Math.round(ovenSetting(temperC, checksOf(settings, measured)) * 10) / 10,
  ],
});
