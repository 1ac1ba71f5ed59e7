import { attemptOr } from "../refusal";
import type { Relation } from "../relation";
import type { Steel } from "../steel/steel";
import { COMPOSITION_FORMULA } from "./composition-formula";
import { curveRelation } from "./curve-relation";
import { EMBRITTLEMENT } from "./embrittlement";
import { fittedCurves } from "./fits";
import { TEMPER_PARAMETER } from "./hollomon-jaffe";
import { temperModel } from "./tempering-model";

/**
 * The relations behind hardness after temper.
 *
 * @param steel - A steel, or `null` for those that apply to any steel.
 * @returns The grade's own curve or the formula, the parameter and the embrittlement ranges; for a
 * steel without an answer only the last two.
 */
export function temperingRelations(steel: Steel | null): readonly Relation[] {
  if (steel === null) return [COMPOSITION_FORMULA, TEMPER_PARAMETER, EMBRITTLEMENT];
  return [...modelRelations(steel), TEMPER_PARAMETER, EMBRITTLEMENT];
}

function modelRelations(steel: Steel): readonly Relation[] {
  // A table for each hardening temperature gives no model until one is chosen.
  const tables = fittedCurves(steel.grade?.designation ?? "");
  if (tables.length > 1) return tables.map(curveRelation);
  return attemptOr([], () => temperModel(steel).relations);
}
