import { relation } from "../relation";
import { heatContent } from "./heat-content";

/** Energy for a furnace load. */
export const FURNACE_ENERGY = relation({
  title: "Energy for a furnace load",
  source: "common",
  locator: "heat content of load and fixture ÷ efficiency, plus holding power × time",
  evidence: "common practice",
  inputs: { efficiency: { label: "efficiency", unit: "", min: 0, max: 1 } },
  output: { label: "energy", unit: "kWh" },
  error: { size: null, unit: "kWh", kind: "as good as the efficiency: meter a load and work it out" },
  note:
    "A small brick furnace heated from cold for a few kg reaches 0.05 to 0.25, a loaded production furnace 0.3 to " +
    "0.6, a gas forge 0.05 to 0.15 (common practice, no source); vendors print more.",
});

/** A furnace load and its furnace. */
export interface FurnaceLoad {
  /** Steel, above 0 [kg]. */
  readonly load: number;
  /** Rack, foil, plates that go in with it, 0 and more [kg]. */
  readonly fixture: number;
  /** That the load is brought to, 20 to 1200 [°C]. */
  readonly temperature: number;
  /** Share of the energy that ends up in load and fixture, above 0 to 1 [-]. */
  readonly efficiency: number;
  /** Power that holds the temperature [kW]. */
  readonly holdPower: number;
  /** Time at temperature [h]. */
  readonly holdHours: number;
}

const ROOM = 20;
const KJ_PER_KWH = 3600;

/**
 * Energy for a furnace load, from 20 °C.
 *
 * @param furnace - Masses [kg], temperature 20 to 1200 [°C], efficiency above 0 to 1, holding power [kW], time [h]
 * @returns Energy [kWh]
 * @throws NotAvailable for a temperature outside 20 to 1200 °C.
 * Error and source: {@link FURNACE_ENERGY}.
 */
export function furnaceEnergy(furnace: FurnaceLoad): number {
  const { load, fixture, temperature, efficiency, holdPower, holdHours } = furnace;
  const heat = (load + fixture) * heatContent(ROOM, temperature);
  return heat / KJ_PER_KWH / efficiency + holdPower * holdHours;
}
