import table from "../../../data/steel/decode-sae-spread.json";
import { number, records } from "../../table";
import { boundsText } from "../limits";
import type { Decoded } from "./decode-name";

const WIDTHS = records(table, { upTo: number, width: number });

/**
 * What stands behind a decoded carbon figure: the limits of the standard where the table holds the
 * grade, the usual width of the range for other SAE steels, nothing for the rest.
 */
export function carbonSpread({ grade, system, parts }: Decoded): string {
  const limits = grade?.limits.C;
  if (limits !== undefined && grade !== null) return `${grade.standard} sets ${boundsText(limits)} %`;
  const carbon = parts[0]?.content ?? null;
  if (carbon === null) return "look the grade up";
  if (system !== "SAE/AISI") return "the limits of its standard are not held";
  const width = WIDTHS.find(({ upTo }) => carbon <= upTo)?.width ?? 0.13;
  return `ranges at this carbon are about ${width.toFixed(2)} % wide`;
}
