import { heatContent } from "./heat-content";

/** A furnace load and its furnace. */
export interface FurnaceLoad {
  /** kg */
  readonly load: number;
  /** Rack, foil, plates that go in with it, kg. */
  readonly fixture: number;
  /** °C */
  readonly temperature: number;
  /** Share of the energy that ends up in load and fixture. */
  readonly efficiency: number;
  /** Power that holds the temperature, kW. */
  readonly holdPower: number;
  /** Time at temperature, h. */
  readonly holdHours: number;
}

const ROOM = 20;
const KJ_PER_KWH = 3600;

/**
 * Energy for a furnace load, from 20 °C.
 *
 * @returns Energy [kWh]
 * @throws NotAvailable for a temperature outside 20 to 1200 °C.
 */
export function furnaceEnergy(furnace: FurnaceLoad): number {
  const { load, fixture, temperature, efficiency, holdPower, holdHours } = furnace;
  const heat = (load + fixture) * heatContent(ROOM, temperature);
  return heat / KJ_PER_KWH / efficiency + holdPower * holdHours;
}
