import { findSteel } from "../core/steel/find";
import type { Steel } from "../core/steel/steel";
import { type Parameter, text, textOrNothing } from "./parameters";

const options = {
  label: "steel",
  kind: "steel",
  help: 'Grade in quotes or a cell that holds it ("1095", "80CrV2", "1.2510"), or an analysis in mass %: "C 0.95 Mn 0.40 Si 0.22".',
  accepts: 'a grade such as "1095" or an analysis such as "C 0.95 Mn 0.40"',
  find: findSteel,
};

/** The steel argument of every function: a designation, alias or number of the library, or an analysis. */
export const steel: Parameter<Steel> = text(options);

/** A steel that may be left out. */
export const steelOrNothing: Parameter<Steel | undefined> = textOrNothing(options);
