import type { Relation } from "../../relation";
import { CARBON_RULES } from "../nominal-carbon";

/** The naming rules of every system. */
export function namingRelations(): readonly Relation[] {
  return [...CARBON_RULES].map(([system, { source, locator }]) => ({
    title: `names of ${system} steels`,
    source,
    locator,
    evidence: "standard",
    inputs: {},
    output: { label: "nominal content", unit: "mass %" },
    error: {
      size: null,
      unit: "mass %",
      kind: "a nominal figure, not a limit; the grade table goes before it",
    },
    note: "Every figure that a name of the grade table states for carbon lies within the limits of its grade; names without a figure in front (Cr12, Х12МФ) say only that carbon is about 1 % or more, and six of them hold more.",
  }));
}
