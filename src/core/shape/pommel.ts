import { betweenText, quantityText } from "../quantity-text";
import { InvalidValue } from "../refusal";
import { type Limit, relation } from "../relation";

const open = (label: string, unit: string): Limit => ({ label, unit, min: null, max: null });

/** Mass at a place that moves the balance. */
export const COUNTERWEIGHT = relation({
  title: "Mass of the pommel for a wanted balance",
  source: "rigid-body",
  locator: "equal moments about the wanted balance",
  evidence: "standard",
  inputs: { wanted: open("wanted balance", "mm") },
  output: { label: "pommel", unit: "g" },
  error: { size: 0, unit: "g", kind: "exact for the masses and places given" },
});

/** Nearer to its own place than this, no pommel is heavy enough to bring the balance there. */
const HEAVIEST_SHARE = 1e6;

/**
 * Mass of a pommel that brings the balance where it is wanted.
 *
 * @param restMass - Everything but the pommel [g]
 * @param restBalance - Balance of everything but the pommel [mm]
 * @param pommelAt - Where the pommel's own balance will sit [mm]
 * @param wanted - Wanted balance of the whole [mm]
 * @returns Mass [g]; 0 where the balance is right without one.
 * @throws InvalidValue where no mass at that place moves the balance there.
 * Error and source: {@link COUNTERWEIGHT}.
 */
export function pommelMass(restMass: number, restBalance: number, pommelAt: number, wanted: number): number {
  const share = (restBalance - wanted) / (wanted - pommelAt);
  if (share >= 0 && share <= HEAVIEST_SHARE) return restMass * share;
  const [low, high] = [restBalance, pommelAt].sort((a, b) => a - b) as [number, number];
  throw new InvalidValue(
    `wanted balance ${quantityText(wanted, "mm")} cannot be reached: a pommel at ` +
      `${quantityText(pommelAt, "mm")} moves it only ${betweenText(low, high, "mm")}`,
  );
}
