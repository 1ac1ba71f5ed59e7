import { attemptOr } from "../../refusal";
import { decodeName } from "./decode-name";

/** Carbon that a name states by its system's rule, mass %; null where it states none or follows no rule. */
export function decodedCarbon(name: string): number | null {
  const [carbon] = attemptOr([], () => decodeName(name).parts);
  return carbon === undefined || carbon.isAbout ? null : carbon.content;
}
