import { quantityText } from "../quantity-text";
import { InvalidValue } from "../refusal";
import { relation } from "../relation";

/** Inertia from a swing. */
export const PENDULUM = relation({
  title: "Inertia from the period of a pendulum",
  source: "rigid-body",
  locator: "mass × g × distance × period² ÷ 4π², less mass × distance²; g 9.80665 m/s²",
  evidence: "measured",
  inputs: { period: { label: "period", unit: "s", min: 0, max: null } },
  output: { label: "inertia about the balance", unit: "kg m²" },
  error: {
    size: null,
    unit: "kg m²",
    kind: "small swings of a few degrees on a free pivot; 1 % of the period is about 3 % of the inertia",
  },
  note: "Hang the blade near the end of its tang or grip, time 20 swings there and back, divide by 20.",
});

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
 * Error and source: {@link PENDULUM}.
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
