import { FURNACE_ENERGY, furnaceEnergy } from "../../core/run/furnace";
import { heatContent, STEEL_HEAT } from "../../core/run/heat-content";
import { scalarFunction } from "../declare";
import { kilograms, share, steelTemperature } from "../money/arguments";
import { number, optionalNumber } from "../parameters";

export const HEAT_CONTENT = scalarFunction({
  name: "HEAT_CONTENT",
  summary: "Heat that steel takes up from one temperature to another, the change to austenite included.",
  parameters: {
    from: number(steelTemperature({ label: "from C", help: "Start, 20 to 1200 °C (68 to 2192 °F)." })),
    to: number(steelTemperature({ label: "to C", help: "End, 20 to 1200 °C (68 to 2192 °F)." })),
  },
  result: { label: "heat", unit: "kJ/kg" },
  relations: [STEEL_HEAT],
  compute: ({ from, to }) => heatContent(from, to),
});

export const FURNACE = scalarFunction({
  name: "FURNACE",
  summary: "Energy for a furnace load from 20 °C (68 °F); the efficiency decides, so meter a load.",
  parameters: {
    load: number(kilograms({ label: "kg", help: "Mass of the blades in the load, in kg." })),
    temperature: number(steelTemperature({ label: "C", help: "Furnace temperature in °C, 20 to 1200." })),
    fixture: optionalNumber({
      label: "fixture kg",
      quantity: "mass",
      unit: "kg",
      min: 0,
      max: 1e6,
      fallback: 0,
      help: "Rack, plates or foil that go in with it, in kg.",
    }),
    efficiency: optionalNumber({
      ...share({
        label: "efficiency",
        help: "Share of the energy that ends up in load and rack: small furnace 0.05 to 0.25, full production furnace 0.3 to 0.6.",
      }),
      fallback: 0.25,
    }),
    holdPower: optionalNumber({
      label: "hold kW",
      quantity: "number",
      unit: "kW",
      min: 0,
      max: 10_000,
      fallback: 0,
      help: "Power that holds the temperature, in kW.",
    }),
    holdHours: optionalNumber({
      label: "hours",
      quantity: "time",
      unit: "h",
      min: 0,
      max: 10_000,
      fallback: 0,
      help: "Time at temperature.",
    }),
  },
  result: { label: "energy", unit: "kWh" },
  relations: [FURNACE_ENERGY, STEEL_HEAT],
  compute: (furnace) => furnaceEnergy(furnace),
});
