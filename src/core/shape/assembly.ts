import { InvalidValue } from "../refusal";
import { type Limit, relation } from "../relation";

const open = (label: string, unit: string): Limit => ({ label, unit, min: null, max: null });

/** Mass, balance and inertia of parts put together. */
export const ASSEMBLED = relation({
  title: "Mass, balance and inertia of parts put together",
  source: "rigid-body",
  locator: "sums of mass and moment; parallel axes",
  evidence: "standard",
  inputs: { mass: { label: "mass", unit: "g", min: 0, max: null }, position: open("position", "mm") },
  output: { label: "inertia", unit: "kg m²" },
  error: { size: 0, unit: "kg m²", kind: "exact for the masses, places and own inertias given" },
  note: "A part without an own inertia counts as a point: for a long part (blade, guard, tang) give it.",
});

/** A part of a sword or knife on its axis. */
export interface Part {
  /** Of the part, above 0 [g]. */
  readonly mass: number;
  /** Of its own balance, along the axis [mm]. */
  readonly position: number;
  /** About its own balance, across the axis; 0 for a point [kg m²]. */
  readonly inertia: number;
}

/** Mass, balance and inertia about the balance. */
export interface Balanced {
  /** Of all parts together [g]. */
  readonly mass: number;
  /** Where it balances on the axis [mm]. */
  readonly balance: number;
  /** About the balance, across the axis [kg m²]. */
  readonly inertia: number;
}

/** g mm² in a kg m². */
export const G_MM2_PER_KG_M2 = 1e9;

/**
 * Mass, balance and inertia of parts put together, such as a blade with its guard, grip and pommel.
 *
 * @param parts - Masses [g], places of their balance on one axis [mm], own inertias [kg m²]
 * @returns Mass [g], balance [mm] and inertia about it [kg m²]
 * @throws InvalidValue for no parts.
 * Error and source: {@link ASSEMBLED}.
 */
export function assembled(parts: readonly Part[]): Balanced {
  const mass = parts.reduce((sum, part) => sum + part.mass, 0);
  if (!(mass > 0)) throw new InvalidValue("no part with a mass given: give masses in g");
  const balance = parts.reduce((sum, part) => sum + part.mass * part.position, 0) / mass;
  const inertia = parts.reduce((sum, part) => {
    return sum + part.inertia + (part.mass * (part.position - balance) ** 2) / G_MM2_PER_KG_M2;
  }, 0);
  return { mass, balance, inertia };
}
