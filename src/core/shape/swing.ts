import { quantityText } from "../quantity-text";
import { InvalidValue } from "../refusal";

/** m/s²; the standard value. */
const GRAVITY = 9.80665;

/**
 * Inertia of a blade hung from a pivot and swung.
 *
 * @param mass - [g]
 * @param distance - From the balance to the pivot [mm]
 * @param period - One swing there and back, small [s]
 * @returns Inertia about the balance [kg m²]
 * @throws InvalidValue where the period is shorter than that of a point mass at that distance.
 */
export function swingInertia(mass: number, distance: number, period: number): number {
  const kilograms = mass / 1000;
  const metres = distance / 1000;
  const aboutPivot = (kilograms * GRAVITY * metres * period ** 2) / (4 * Math.PI ** 2);
  const inertia = aboutPivot - kilograms * metres ** 2;
  if (inertia > 0) return inertia;
  const shortest = 2 * Math.PI * Math.sqrt(metres / GRAVITY);
  throw new InvalidValue(
    `period ${quantityText(period, "s")} is too short for a pivot ${quantityText(distance, "mm")} from the balance: ` +
      `any body takes longer than ${quantityText(shortest, "s")} for a swing there and back; count both ways`,
  );
}
