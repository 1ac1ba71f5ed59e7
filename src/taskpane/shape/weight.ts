import { InvalidValue } from "../../core/refusal";
import { firstRow } from "../parts/ask";
import { figureReading } from "../parts/reading";
import type { BladeInput } from "./blade-form";
import { asked, bladeArguments, type Offered, typedArgument } from "./calls";

/** Mass [g], balance [mm] and inertia about it [kg m²]. */
export interface Body {
  readonly mass: number;
  readonly balance: number;
  readonly inertia: number;
}

export interface Weighed {
  readonly blade: Body;
  /** The blade with tang and fittings; the blade where there are none. */
  readonly whole: Body;
  /** mm³ */
  readonly volume: number;
  readonly formulas: readonly Offered[];
}

/** Ten digits: what is written into the sheet gives the same figure there. */
const digits = (value: number) => Number(value.toPrecision(10));

/** The blade and its fittings in one. */
function together(
  { fittings }: BladeInput,
  blade: Body,
): { readonly body: Body; readonly formulas: Offered[] } {
  if (fittings.mass.length === 0) return { body: blade, formulas: [] };
  const { reply, formula } = asked("ASSEMBLY", [
    [digits(blade.mass), ...fittings.mass],
    [digits(blade.balance), ...fittings.position],
    [digits(blade.inertia), ...fittings.inertia],
  ]);
  if (reply.refusal !== null) throw new InvalidValue(reply.refusal);
  const [mass = 0, balance = 0, inertia = 0] = firstRow(reply).map(Number);
  return {
    body: { mass, balance, inertia },
    formulas: [["Mass, balance and inertia with tang and fittings, in three cells", formula]],
  };
}

/**
 * What the blade weighs and where it balances.
 *
 * @throws Refusal with the sentence that the sheet would show.
 */
export function weighed(input: BladeInput): Weighed {
  const { reply, formula } = asked("STATIONS", bladeArguments(input));
  if (reply.refusal !== null) throw new InvalidValue(reply.refusal);
  const [volume = 0, mass = 0, balance = 0, inertia = 0] = firstRow(reply).map(Number);
  const blade = { mass, balance, inertia };
  const { body, formulas } = together(input, blade);
  return {
    blade,
    whole: body,
    volume,
    formulas: [["Volume, mass, balance and inertia in four cells", formula], ...formulas],
  };
}

export interface Percussion {
  readonly text: string;
  readonly at: number | undefined;
  readonly refusal: string | null;
  readonly formulas: readonly Offered[];
}

/** The place that belongs to the grip: a blow there does not jolt the hand. */
export function percussionOf({ held }: BladeInput, { mass, balance, inertia }: Body): Percussion {
  if (held === "") return { text: "", at: undefined, refusal: null, formulas: [] };
  const given = [digits(mass), digits(balance), digits(inertia), typedArgument(held)];
  const { reply, formula } = asked("PERCUSSION_CENTRE", given);
  if (reply.refusal !== null) return { text: "", at: undefined, refusal: reply.refusal, formulas: [] };
  const at = Number(firstRow(reply)[0]);
  return {
    text: `${figureReading(at.toFixed(0), "mm")}, held at ${Number.isFinite(Number(held)) ? `${held} mm` : held}`,
    at,
    refusal: null,
    formulas: [["Centre of percussion", formula]],
  };
}
