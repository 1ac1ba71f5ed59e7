import table from "../../data/blade/bands-by-steel.json";
import { attemptOr } from "../refusal";
import { EVIDENCE_KINDS } from "../relation";
import type { Steel } from "../steel/steel";
import { listOf, number, oneOf, records, sourceKey, text } from "../table";
import type { Use } from "./bands";
import { STEEL_KINDS, steelKind } from "./steel-kind";

const BANDS = records(table, {
  use: text,
  kinds: listOf(oneOf(STEEL_KINDS)),
  saidAs: text,
  low: number,
  high: number,
  aim: number,
  evidence: oneOf(EVIDENCE_KINDS),
  sources: listOf(sourceKey),
  disagreement: text,
});

/**
 * A use with the band that is usual in a steel. Everything that judges a blade of a known steel reads this.
 *
 * @param use - A use with the band for any steel.
 * @param steel - The steel of the blade; left out, the band of the use stands.
 * @returns The use; its hardness [HRC], evidence, sources and disagreement are those of the kind of steel
 *   where such a band is told.
 */
export function bandFor(use: Use, steel: Steel | undefined): Use {
  const kind = steel && attemptOr(null, () => steelKind(steel));
  const own = BANDS.find((band) => band.use === use.word && band.kinds.some((one) => one === kind));
  if (own === undefined) return use;
  const { low, high, aim, evidence, sources, saidAs, disagreement } = own;
  return { ...use, low, high, aim, evidence, sources, disagreement: `In ${saidAs}: ${disagreement}` };
}
