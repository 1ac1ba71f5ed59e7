import table from "../../data/hardening/heat-transfer.json";
import { NotAvailable } from "../refusal";
import type { Relation } from "../relation";
import { SOURCES, type SourceKey } from "../sources";
import { grouped, number, records, sourceKey, text } from "../table";
import type { QuenchMedium } from "./quench-media";

/** Heat transfer from a surface to a quench. */
export interface HeatTransferCoefficient {
  readonly medium: string;
  readonly bathC: number;
  readonly source: SourceKey;
  /** Heat transfer coefficient in W/m²K for each whole °C from 0. */
  readonly byDegree: Float64Array;
}

const DEGREES = 1301;

const printed = records(table, {
  medium: text,
  bathC: number,
  surfaceC: number,
  coefficient: number,
  source: sourceKey,
});

type Point = (typeof printed)[number];

/** Straight line between the printed surface temperatures; beyond them the end value stands. */
function between(points: readonly Point[], celsius: number): number {
  const above = points.findIndex(({ surfaceC }) => surfaceC >= celsius);
  const right = points[above];
  const left = points[above - 1];
  if (right === undefined) return (points[points.length - 1] as Point).coefficient;
  if (left === undefined) return right.coefficient;
  const share = (celsius - left.surfaceC) / (right.surfaceC - left.surfaceC);
  return left.coefficient + share * (right.coefficient - left.coefficient);
}

function coefficientOf(points: readonly Point[]): HeatTransferCoefficient {
  const { medium, bathC, source } = points[0] as Point;
  const byDegree = Float64Array.from({ length: DEGREES }, (_, celsius) => between(points, celsius));
  return { medium, bathC, source, byDegree };
}

const coefficients = new Map(
  [...grouped(printed, ({ medium }) => medium)].map(([medium, points]) => [medium, coefficientOf(points)]),
);

/** Media whose heat transfer is held, liquids first. */
export const HEAT_TRANSFER_MEDIA: readonly string[] = [...coefficients.keys()];

/** What a blade meets on the way to the bath. */
export const STILL_AIR = coefficients.get("still air") as HeatTransferCoefficient;

/**
 * The heat transfer coefficient of a quench.
 *
 * @throws NotAvailable where none is held, listing those that are.
 */
export function heatTransferOf(quench: QuenchMedium): HeatTransferCoefficient {
  const coefficient = coefficients.get(quench.word);
  if (coefficient !== undefined) return coefficient;
  throw new NotAvailable(
    `no figure is held for how fast ${quench.word} draws heat; a section can be worked for ${HEAT_TRANSFER_MEDIA.join(", ")}`,
  );
}

/** The relation behind the heat transfer of a quench. */
export function heatTransferRelation({ medium, source }: HeatTransferCoefficient): Relation {
  const measured = SOURCES[source].seen === "READ";
  return {
    title: `Heat drawn by ${medium}`,
    source,
    locator: "heat transfer coefficient by surface temperature",
    evidence: measured ? "measured" : "compiled",
    inputs: {},
    output: { label: "heat transfer coefficient", unit: "W/m²K" },
    error: {
      size: 25,
      unit: "%",
      kind: "one standard deviation assumed; a bath differs from place to place by more",
    },
    note: "Beyond the first and last temperature held, the end value stands.",
  };
}

/** Heat transfer coefficient in W/m²K at a surface temperature in °C. */
export function coefficientAt({ byDegree }: HeatTransferCoefficient, celsius: number): number {
  const floor = Math.min(DEGREES - 2, Math.max(0, Math.floor(celsius)));
  const low = byDegree[floor] as number;
  return low + (celsius - floor) * ((byDegree[floor + 1] as number) - low);
}
