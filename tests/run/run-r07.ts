import type { Line } from "./run";

/* The invented run R-07, sizes of its cut list, with faults planted as people make them. */
const COMMON = { confidence: 0.9, "bar length": 3000, "price kg": 9, "price date": "2026-10-01" };
export const RUN: readonly Line[] = [
  {
    line: "L1",
    use: "Chef knife thin hard",
    steel: "52100",
    good: 24,
    yield: 0.92,
    length: 346,
    width: 50,
    thickness: 3,
    "target HRC": 60,
    quench: "medium oil",
    ...COMMON,
  },
  {
    line: "L2",
    use: "Field camp bushcraft",
    steel: "80CrV2",
    good: 40,
    yield: 0.95,
    length: 241,
    width: 38,
    thickness: 4,
    "target HRC": 58,
    quench: "medium oil",
    ...COMMON,
  },
  {
    line: "L3",
    use: "Machete light",
    steel: "1075",
    good: 12,
    yield: 0.95,
    length: 611,
    width: 60,
    thickness: 2.5,
    "target HRC": 49,
    quench: "fast oil",
    ...COMMON,
  },
  {
    line: "L5",
    use: "Practice longsword blunt",
    steel: "51CrV4",
    good: 8,
    yield: 0.9,
    length: 900,
    width: 46,
    thickness: 6,
    "target HRC": 49,
    quench: "medium oil",
    ...COMMON,
  },
  {
    line: "L6",
    use: "European sword sharp",
    steel: "5160",
    good: 4,
    yield: 0.85,
    length: 780,
    width: 50,
    thickness: 6,
    "target HRC": 52,
    quench: "medium oil",
    ...COMMON,
  },
];

/** The run with one line changed. */
export function changed(name: string, change: Line): Line[] {
  return RUN.map((line) => (line.line === name ? { ...line, ...change } : line));
}

/** The line of a name; empty where there is none. */
export function lineOf(rows: readonly Record<string, unknown>[], name: string): Record<string, unknown> {
  return rows.find((row) => row.line === name) ?? {};
}
