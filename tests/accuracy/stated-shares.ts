import { STAINLESS_FIT } from "../../src/core/hardening/stainless-fit";
import { TENSILE_STRENGTH, YIELD_RATIO } from "../../src/core/hardness/strength";
import { missesLeftOut } from "../fitting/fit-stainless";
import { strengthMisses } from "../fitting/fit-strength";
import { MEASURED } from "./measured";

/** How many rows that took no part in a fit lie in the band that the library states. */
export interface StatedShare {
  readonly what: string;
  /** The band as stated. */
  readonly band: string;
  readonly inside: number;
  readonly rows: number;
  /** Keys of the sources of the rows, and how they were kept out of the fit. */
  readonly sources: readonly string[];
  readonly how: string;
}

const NEVER_IN = "rows of no fit";

/** The share over published tables, which stand under `tests/accuracy/published`. */
function ofTables(what: string, band: string, names: readonly string[]): StatedShare {
  const keys = names.map((name) => `accuracy/published/${name}.json`);
  const tables = MEASURED.filter(({ key, fitted }) => keys.includes(key) && !fitted);
  if (tables.length !== keys.length) throw new Error(`${what}: a table is missing or took part in a fit`);
  const held = tables.flatMap((table) => table.held);
  return {
    what,
    band,
    inside: held.filter((one) => one === true).length,
    rows: held.length,
    sources: [...new Set(tables.flatMap(({ sources }) => sources))],
    how: NEVER_IN,
  };
}

function ofMisses(
  what: string,
  band: string,
  halfWidth: number,
  list: readonly { source: string; miss: number }[],
  how: string,
): StatedShare {
  return {
    what,
    band,
    inside: list.filter(({ miss }) => Math.abs(miss) <= halfWidth).length,
    rows: list.length,
    sources: [...new Set(list.map(({ source }) => source))],
    how,
  };
}

/** With all 92 rows, 63 of a handbook whose tables are not held, each source left out of its own fit: 86 and 87 inside, as counted in 2026. */
function ofYield(perCent: number): StatedShare {
  const list = strengthMisses().map(({ row, yieldMiss }) => ({ source: row.source, miss: yieldMiss }));
  const how = "rows held of those behind it; with all 92, each source left out, 87 were inside";
  return ofMisses("yield strength from hardness and temper", `±${perCent} %`, perCent / 100, list, how);
}

/** Every stated band that issue and reader ask for first, with the rows that test it. */
export const STATED_SHARES: readonly StatedShare[] = [
  ofMisses(
    "stainless steel after temper",
    `±${STAINLESS_FIT.halfWidth} HRC`,
    STAINLESS_FIT.halfWidth,
    missesLeftOut().map(({ row, miss }) => ({ source: row.source, miss })),
    "each series left out of its own fit",
  ),
  ofTables("tool steel after temper", "as stated row by row, ±2.5 to ±5.5 HRC", [
    "chinese-tool-steels",
    "crucible-o1",
    "eastern-o1",
    "garland-o1",
    "handbook-s7",
    "forming-handbook-tools",
  ]),
  ofTables("tensile strength from hardness", `±${TENSILE_STRENGTH.error.size} %`, [
    "s7-strength",
    "cutlery-stainless-strength",
    "mikipulley-tensile",
    "phase2-tensile",
  ]),
  ofYield(YIELD_RATIO.error.size ?? 0),
  ofTables("Ms to 0.80 % C", "±38 °C", ["start-handbooks-lean"]),
  ofTables("Ms above 0.80 % C", "±70 °C", ["start-handbooks-carbide"]),
  ofTables("Ms above 9 % Cr", "±90 °C", ["start-handbooks-stainless"]),
  ofTables("Ac1", "±24 °C", ["lower-critical", "lower-critical-cards", "lower-critical-recalled"]),
  ofTables("Ac3", "±30 °C", ["upper-critical-cards", "upper-critical-recalled"]),
  ofTables("end-quench hardness", "±5 HRC", [
    "hardenability-bands",
    "hardenability-band-4140h",
    "hardenability-band-5160h",
  ]),
];
