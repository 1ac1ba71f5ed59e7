import table from "../../data/steel/toughness.json";
import { numberText } from "../quantity-text";
import type { Relation } from "../relation";
import { grouped, number, records, sourceKey, text } from "../table";
import { type SteelAsked, steelAsked } from "./asked";
import { heldName } from "./kin";
import type { Steel } from "./steel";

/** One published figure of toughness. */
const figures = records(table, {
  grade: text,
  test: text,
  unit: text,
  hrc: number,
  low: number,
  high: number,
  source: sourceKey,
});

type Toughness = (typeof figures)[number];

const byGrade = grouped(figures, ({ grade }) => grade);

function published(steel: Steel): readonly Toughness[] {
  return heldName(steel, (designation) => byGrade.get(designation)) ?? [];
}

function valueText({ low, high, unit }: Toughness): string {
  return `${low === high ? numberText(low) : `${numberText(low)} to ${numberText(high)}`} ${unit}`;
}

/** A figure this far from the hardness asked still speaks for it [HRC]. */
const NEAR_HRC = 1;

/**
 * Toughness published for a steel near a hardness, its test named; empty where none is.
 * Figures of different tests are never compared.
 *
 * @param steel - A grade or an analysis, or its name.
 * @param hrc - Hardness [HRC]
 * @returns A figure with its unit [J, ft lb ...], its test and the hardness it was read at, in words.
 * Limits: none are checked. Error and source: those printed for the grade, as EVIDENCE names them.
 */
export function toughnessAt(steel: SteelAsked, hrc: number): string {
  steel = steelAsked(steel);
  const near = published(steel).filter((figure) => Math.abs(figure.hrc - hrc) <= NEAR_HRC);
  const nearest = near.reduce<Toughness | undefined>(
    (best, figure) =>
      best === undefined || Math.abs(figure.hrc - hrc) < Math.abs(best.hrc - hrc) ? figure : best,
    undefined,
  );
  return nearest === undefined ? "" : `${valueText(nearest)}, ${nearest.test}, at ${nearest.hrc} HRC`;
}

/** What is published of the toughness of a steel, a relation a test. */
export function toughnessRelations(steel: Steel | null): readonly Relation[] {
  const held = steel === null ? figures : published(steel);
  return [...grouped(held, ({ grade, test }) => `${test} of ${grade}`)].map(([title, rows]) => ({
    title: `Toughness by hardness: ${title}`,
    source: (rows[0] as Toughness).source,
    locator: rows.map((row) => `${valueText(row)} at ${row.hrc} HRC`).join(", "),
    evidence: "compiled" as const,
    inputs: {},
    output: { label: "toughness", unit: (rows[0] as Toughness).unit },
    error: { size: null, unit: "", kind: "one sheet; figures of other notches are not comparable" },
  }));
}
