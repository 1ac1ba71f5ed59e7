import { DECARB_RELATIONS, decarbDepth, grindAllowance, SCALE_LOSS } from "../../core/hardening/decarb";
import { rowFunction, scalarFunction } from "../declare";
import { number, optionalNumber } from "../parameters";
import { steel } from "../steel-argument";

const heat = {
  steel,
  celsius: number({
    label: "C",
    quantity: "temperature",
    unit: "°C",
    above: 0,
    max: 1400,
    help: "Temperature of the steel in °C, bare in air.",
  }),
  minutes: number({
    label: "minutes",
    quantity: "time",
    unit: "min",
    above: 0,
    max: 10_000,
    help: 'Time at that temperature over all heats, in minutes; "1 h" is converted.',
  }),
};

const toHundredth = (mm: number) => Math.round(mm * 100) / 100;

export const DECARB = scalarFunction({
  name: "DECARB",
  summary: "Depth of the skin that has lost more than a tenth of its carbon, good to half either way.",
  parameters: heat,
  result: { label: "depth", unit: "mm" },
  relations: DECARB_RELATIONS,
  compute: ({ steel, celsius, minutes }) => toHundredth(decarbDepth(steel, celsius, minutes)),
});

export const GRIND_ALLOWANCE = rowFunction({
  name: "GRIND_ALLOWANCE",
  summary: "Stock to leave on each face so that grinding takes off scale and the skin short of carbon.",
  parameters: {
    ...heat,
    heats: optionalNumber({
      label: "heats",
      quantity: "count",
      unit: "",
      min: 1,
      max: 100,
      whole: true,
      fallback: 1,
      help: "Heats that the time was spent in, scale brushed off after each.",
    }),
  },
  result: [
    { label: "skin to remove a face", unit: "mm" },
    { label: "advice", unit: "text" },
  ],
  relations: [...DECARB_RELATIONS, SCALE_LOSS],
  compute: ({ steel, celsius, minutes, heats }) => {
    const { skinMm, advice } = grindAllowance(steel, celsius, minutes, heats);
    return [toHundredth(skinMm), advice];
  },
});
