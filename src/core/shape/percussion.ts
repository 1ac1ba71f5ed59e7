import { quantityText } from "../quantity-text";
import { InvalidValue } from "../refusal";
import { type Balanced, G_MM2_PER_KG_M2 } from "./assembly";

/** Nearer to the balance than this share of the radius of gyration, the partner lies past any blade. */
const TOO_NEAR = 1e-6;

/** Square of the radius of gyration, mm². */
function gyrationSquared({ mass, inertia }: Balanced): number {
  return (inertia * G_MM2_PER_KG_M2) / mass;
}

/**
 * Centre of percussion of a held point: struck there, a rigid body turns about the held point and gives
 * it no jolt.
 *
 * @param body - Mass [g], balance [mm], inertia about the balance [kg m²]
 * @param held - Where it is held, on the same axis [mm]
 * @returns Position [mm]
 * @throws InvalidValue where it is held at the balance: there is no such point then.
 */
export function percussionCentre(body: Balanced, held: number): number {
  const gyration = gyrationSquared(body);
  const distance = body.balance - held;
  if (Math.abs(distance) <= TOO_NEAR * Math.sqrt(gyration)) {
    throw new InvalidValue(
      `held at ${quantityText(held, "mm")}, which is the balance: a blade held there has no centre of percussion`,
    );
  }
  return body.balance + gyration / distance;
}

/**
 * Mass with which a free rigid body meets a target: the whole at the balance, less toward the ends.
 *
 * @param body - Mass [g], balance [mm], inertia about the balance [kg m²]
 * @param at - Place of impact on the same axis [mm]
 * @returns Effective mass [g]
 */
export function effectiveMass(body: Balanced, at: number): number {
  return body.mass / (1 + (at - body.balance) ** 2 / gyrationSquared(body));
}
