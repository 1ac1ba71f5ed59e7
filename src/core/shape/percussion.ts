import { quantityText } from "../quantity-text";
import { InvalidValue } from "../refusal";
import { type Limit, relation } from "../relation";
import { type Balanced, G_MM2_PER_KG_M2 } from "./assembly";

const open = (label: string, unit: string): Limit => ({ label, unit, min: null, max: null });

const NOT_THE_NODE =
  "Rigid body only: the blade's own bending is left out. It is not the node of vibration near the point, which " +
  "some texts call by the same name.";

/** Points that turn about each other. */
export const PERCUSSION = relation({
  title: "Centre of percussion (pivot point) that belongs to a held point",
  source: "kiel-iron-steel-swords",
  locator: "distance from the balance: inertia ÷ (mass × distance of the held point)",
  evidence: "standard",
  inputs: { held: open("held at", "mm") },
  output: { label: "position", unit: "mm" },
  error: { size: null, unit: "mm", kind: "exact for a rigid body; as good as the inertia given" },
  note: `Points come in pairs: each is the centre of percussion of the other. ${NOT_THE_NODE}`,
});

/** Mass that a target feels. */
export const IMPACT_MASS = relation({
  title: "Effective mass at a place of impact",
  source: "kiel-iron-steel-swords",
  locator: "1 ÷ (1 / mass + distance² / inertia)",
  evidence: "standard",
  inputs: { at: open("at", "mm") },
  output: { label: "effective mass", unit: "g" },
  error: { size: null, unit: "g", kind: "exact for a free rigid body; the hand adds to it near the grip" },
  note: NOT_THE_NODE,
});

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
 * Error and source: {@link PERCUSSION}.
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
 * Limits: none are checked. Error and source: {@link IMPACT_MASS}.
 */
export function effectiveMass(body: Balanced, at: number): number {
  return body.mass / (1 + (at - body.balance) ** 2 / gyrationSquared(body));
}
