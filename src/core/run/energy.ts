import { usualHardening } from "../hardening/hardening-temperature";
import { asSentence, temperatureText } from "../quantity-text";
import { attempt, NotAvailable } from "../refusal";
import { furnaceEnergy } from "./furnace";
import type { Figure, ReadLine } from "./line";
import type { LoadShare } from "./load-packing";
import type { FurnaceLine } from "./loads";

/** Heat of a line. */
export interface PlannedEnergy {
  /** Furnace loads of the line [-]. */
  readonly loads: number | undefined;
  /** Energy of all loads [kWh]. */
  readonly kilowattHours: Figure;
  /** How long they keep the ovens [h]. */
  readonly ovenHours: number | undefined;
  /** Sentences on what the heat leaves open. */
  readonly cautions: readonly string[];
}

const NONE: PlannedEnergy = {
  loads: undefined,
  kilowattHours: undefined,
  ovenHours: undefined,
  cautions: [],
};

/** A line as the furnace sees it; `undefined` where it is treated outside or no capacity is given. */
export function furnaceLine(
  line: ReadLine,
  pieces: number,
  mass: number | undefined,
  recipe: string,
): FurnaceLine | undefined {
  const { piecesALoad, massALoad, outsideHeat } = line;
  const hasCapacity = piecesALoad !== undefined || (massALoad !== undefined && mass !== undefined);
  if (outsideHeat !== undefined || !hasCapacity) return undefined;
  // Without the mass of a piece only the count can limit a load.
  const limits = {
    pieces: piecesALoad ?? Infinity,
    mass: mass === undefined ? Infinity : (massALoad ?? Infinity),
  };
  return { recipe: line.recipe ?? recipe, pieces, mass: mass ?? 0, limits };
}

function heatingUp(line: ReadLine, kilograms: number): Figure {
  const temperature = line.hardenC ?? usualHardening(line.steel).celsius;
  const { efficiency } = line;
  const load = { load: kilograms, fixture: 0, holdPower: 0, holdHours: 0 };
  return attempt(() => furnaceEnergy({ ...load, temperature, efficiency }), NotAvailable);
}

function windowCaution({ steel, hardenC }: ReadLine): string[] {
  if (hardenC !== undefined) return [];
  const { celsius, source } = usualHardening(steel);
  if (source !== null) return [];
  return [
    `No hardening window of ${steel.name} is held: ${temperatureText(celsius)} taken for the energy only.`,
  ];
}

function sharedCaution(share: LoadShare | undefined): string[] {
  if (share === undefined || share.shared === 0) return [];
  const pieces = share.shared === 1 ? "1 piece goes" : `${share.shared} pieces go`;
  return [`${pieces} into loads of another line of the same recipe, counted there.`];
}

function energyOf(line: ReadLine, kilograms: number | undefined, loads: number | undefined): Figure {
  const { meteredEnergy, holdEnergy = 0 } = line;
  if (meteredEnergy !== undefined) return loads === undefined ? undefined : loads * meteredEnergy;
  if (kilograms === undefined) return undefined;
  const heating = heatingUp(line, kilograms);
  return typeof heating === "number" ? heating + holdEnergy * (loads ?? 0) : heating;
}

/**
 * Loads and energy of a line: metered energy a load where given, else heating up by mass and efficiency
 * and holding by load.
 *
 * @param kilograms - Of all pieces as they are hardened.
 */
export function plannedEnergy(
  line: ReadLine,
  kilograms: number | undefined,
  share: LoadShare | undefined,
): PlannedEnergy {
  if (line.outsideHeat !== undefined) return NONE;
  const loads = share?.added;
  const kilowattHours = energyOf(line, kilograms, loads);
  const needsLoads = line.meteredEnergy ?? line.holdEnergy ?? line.ovenHours;
  const cautions = [...sharedCaution(share), ...windowCaution(line)];
  if (kilowattHours instanceof NotAvailable) cautions.push(asSentence(kilowattHours.message));
  if (needsLoads !== undefined && loads === undefined) {
    cautions.push("Loads not counted: give pieces a load or kg a load.");
  }
  const { ovenHours } = line;
  return {
    loads,
    kilowattHours,
    ovenHours: ovenHours === undefined || loads === undefined ? undefined : loads * ovenHours,
    cautions,
  };
}
