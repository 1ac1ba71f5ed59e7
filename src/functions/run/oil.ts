import { STEEL_HEAT } from "../../core/run/heat-content";
import { FLASH_MARGIN, OIL_HEAT, oilLitres, oilRise } from "../../core/run/oil";
import { rowFunction, scalarFunction } from "../declare";
import { kilograms, steelTemperature } from "../money/arguments";
import { number, numberOrNothing, optionalNumber } from "../parameters";

const quench = {
  mass: number(kilograms({ label: "kg", help: "Mass of hot steel that goes in, in kg." })),
  from: number(steelTemperature({ label: "from C", help: "Temperature of the steel as it goes in, in °C." })),
  to: number(steelTemperature({ label: "to C", help: "Temperature of the steel as it comes out, in °C." })),
};

export const OIL_RISE = rowFunction({
  name: "OIL_RISE",
  summary: "How much a quench heats the oil, how hot it gets, and a caution near the flash point.",
  parameters: {
    ...quench,
    litres: number({
      label: "litres",
      quantity: "capacity",
      unit: "L",
      min: 0.01,
      max: 100_000,
      help: 'Oil in the tank in litres, or "5 gal" (US).',
    }),
    start: optionalNumber({
      ...steelTemperature({ label: "oil start C", help: "Oil before the quench, in °C." }),
      fallback: 50,
    }),
    flashPoint: numberOrNothing({
      ...steelTemperature({ label: "flash point C", help: "Flash point from the oil's data sheet, in °C." }),
      above: 0,
    }),
    density: optionalNumber({
      label: "density",
      quantity: "number",
      unit: "kg/L",
      min: 0.1,
      max: 2,
      fallback: 0.87,
      help: "Density of the oil in kg/L.",
    }),
    specificHeat: optionalNumber({
      label: "specific heat",
      quantity: "number",
      unit: "kJ/(kg K)",
      min: 0.1,
      max: 5,
      fallback: 2,
      help: "Specific heat of the oil in kJ/(kg K).",
    }),
  },
  result: [
    { label: "rise", unit: "K" },
    { label: "final oil", unit: "°C" },
    { label: "caution", unit: "text" },
  ],
  relations: [OIL_HEAT, FLASH_MARGIN, STEEL_HEAT],
  compute: ({ mass, from, to, ...bath }) => {
    const { rise, final, caution } = oilRise({ mass, from, to }, bath);
    return [rise, final, caution];
  },
});

export const OIL_LITRES = scalarFunction({
  name: "OIL_LITRES",
  summary: "Oil that keeps the rise of a quench to what is wanted; usual oil, 0.87 kg/L.",
  parameters: {
    ...quench,
    rise: number({
      label: "rise K",
      quantity: "number",
      unit: "K",
      min: 0.1,
      max: 500,
      help: "Allowed rise as a difference in K (the same as °C; 50 °F are 27.8 K).",
    }),
  },
  result: { label: "oil", unit: "L" },
  relations: [OIL_HEAT, STEEL_HEAT],
  compute: ({ rise, ...steel }) => oilLitres(steel, rise),
});
