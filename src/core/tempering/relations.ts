import { attemptOr } from "../refusal";
import { type Relation, relation } from "../relation";
import type { Steel } from "../steel/steel";
import { COMPOSITION_FORMULA } from "./composition-formula";
import { curveRelation } from "./curve-relation";
import { EMBRITTLEMENT } from "./embrittlement";
import { fittedCurves } from "./fits";
import { HOLLOMON_JAFFE } from "./hollomon-jaffe";
import { temperModel } from "./tempering-model";

/** Why the best-known table of plain carbon steel reads lower than the figures here. */
const BARS_WITH_PEARLITE = relation({
  title: "Handbook rows of plain carbon steel read about 3 HRC lower: those bars held pearlite",
  source: "asm-handbook-4",
  locator: "table of hardness after temper by steel, 2 h",
  evidence: "measured",
  inputs: {},
  output: { label: "hardness", unit: "HRC" },
  error: { size: null, unit: "HRC", kind: "not used for any figure" },
  note: "Its 1095 loses 3 HRC from 425 to 595 °C (797 to 1103 °F), as pearlite does; martensite of that carbon loses over 10. A blade that hardened through reads the higher figure.",
});

/** Carbon from which the rows of that table part from hardened bars [mass %]. */
const PEARLITE_CARBON = 0.6;

function holdsPearlite({ family, composition }: Steel): boolean {
  return family === "plain carbon" && composition.C >= PEARLITE_CARBON;
}

/**
 * The relations behind hardness after temper.
 *
 * @param steel - A steel, or `null` for those that apply to any steel.
 * @returns The grade's own curve or the formula, the parameter and the embrittlement ranges; for a
 * steel without an answer only the last two.
 */
export function temperingRelations(steel: Steel | null): readonly Relation[] {
  if (steel === null) return [COMPOSITION_FORMULA, HOLLOMON_JAFFE, EMBRITTLEMENT];
  const bars = holdsPearlite(steel) ? [BARS_WITH_PEARLITE] : [];
  return [...modelRelations(steel), ...bars, HOLLOMON_JAFFE, EMBRITTLEMENT];
}

function modelRelations(steel: Steel): readonly Relation[] {
  // A table for each hardening temperature gives no model until one is chosen.
  const tables = fittedCurves(steel.grade?.designation ?? "");
  if (tables.length > 1) return tables.map(curveRelation);
  return attemptOr([], () => temperModel(steel).relations);
}
