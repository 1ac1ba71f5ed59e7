import { firstRow } from "../parts/ask";
import { figureReading } from "../parts/reading";
import type { BladeInput } from "./blade-form";
import { asked, bladeArguments, type Offered } from "./calls";

/** How the blade rings, with the places that stand still. */
export interface Ringing {
  readonly facts: readonly (readonly [name: string, value: string])[];
  readonly refusal: string | null;
  readonly formulas: readonly Offered[];
  /** Quiet points in the x of the stations, mm */
  readonly quiet: readonly number[];
}

const placeText = (cell: string) =>
  Number.isFinite(Number(cell)) ? figureReading(Number(cell).toFixed(0), "mm") : cell;

/** What RING answers for the blade with its tang and fittings. */
export function ringingOf(blade: BladeInput): Ringing {
  const { mass, position, inertia } = blade.fittings;
  const fittings = mass.length === 0 ? [] : [mass, position, inertia];
  const { reply, formula } = asked("RING", [...bladeArguments(blade), ...fittings]);
  if (reply.refusal !== null) return { facts: [], refusal: reply.refusal, formulas: [], quiet: [] };
  const [first = "", near = "", far = "", second = ""] = firstRow(reply);
  return {
    facts: [
      ["Rings at", `${Number(first).toPrecision(3)} Hz, then ${Number(second).toPrecision(3)} Hz`],
      ["Quiet points", `${placeText(near)} and ${placeText(far)}`],
    ],
    refusal: null,
    formulas: [["Frequencies and quiet points in four cells", formula]],
    quiet: [near, far].map(Number).filter(Number.isFinite),
  };
}
