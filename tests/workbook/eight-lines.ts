import { EMPTY_DATA, exampleData, type TemplateData } from "../../src/workbook/sheets/template-data";

/** Lines of one order as a smith would write them; every name is invented. */
const LINES = [
  [
    "K1",
    "Kitchen knife 210",
    "Chef knife thin hard",
    "O1",
    20,
    61,
    "medium oil",
    "flat",
    210,
    46,
    2.5,
    6,
    1.2,
    0.25,
  ],
  [
    "K2",
    "Kitchen knife 240",
    "Chef knife thin hard",
    "52100",
    30,
    61,
    "medium oil",
    "flat",
    240,
    50,
    2.6,
    6,
    1.2,
    0.25,
  ],
  ["K3", "Machete 480", "Machete light", "1075", 24, 50, "fast oil", "flat", 480, 58, 2.5, 40, 2, 0.6],
  ["K4", "Hatchet head", "Hatchet bit", "1055", 12, 55, "fast oil", "rectangle", 130, 42, 22, 70, 2, null],
  [
    "K5",
    "Arming sword",
    "European sword sharp",
    "5160",
    6,
    52,
    "medium oil",
    "diamond",
    790,
    50,
    6,
    20,
    3.5,
    0.6,
  ],
  [
    "K6",
    "Longsword",
    "European sword sharp",
    "6150",
    5,
    52,
    "medium oil",
    "diamond",
    900,
    48,
    6,
    20,
    3.5,
    0.6,
  ],
  [
    "K7",
    "Clay blade",
    "Differential edge Japanese style",
    "1095",
    8,
    60,
    "agitated water",
    "flat",
    300,
    30,
    7,
    10,
    4,
    0.8,
  ],
  [
    "K8",
    "Fillet knife",
    "Fillet flexible",
    "X50CrMoV15",
    40,
    53,
    "plates",
    "flat",
    180,
    28,
    1.5,
    5,
    0.8,
    0.25,
  ],
] as const;

const KEYS = [
  "line",
  "item",
  "use",
  "steel",
  "good",
  "aim",
  "quench",
  "grind",
  "length",
  "width",
  "thickness",
  "tipWidth",
  "tipThickness",
  "edge",
] as const;

export interface EightLine extends Record<(typeof KEYS)[number], number | string | null> {
  readonly line: string;
}

/** The lines by what their figures are. */
export const EIGHT = LINES.map((line) =>
  Object.fromEntries(KEYS.map((key, at) => [key, line[at]])),
) as unknown as readonly EightLine[];

const FORGED: readonly string[] = ["K5", "K6"];
/** What one piece is cut as: blade, tang and an allowance, in mm. */
const blankOf = ([name, , , , , , , , length, width, thickness]: (typeof LINES)[number]) =>
  FORGED.includes(name) ? [null, 30, 8, 3000, 0] : [length + 130, width + 2, thickness + 0.5, 3000, 0];

const APART: Readonly<Record<string, TemplateData["recipes"][number]>> = {
  K7: { clay: 3, clayFrom: 12 },
  K8: { quenchTo: -80, subZeroHours: 1 },
};
const OUTSIDE: readonly string[] = [...FORGED, "K8"];

/** Where, line, g a piece, pieces a load, oil, holding and tempering kWh, charges of whoever hardens it. */
function batchOf(name: string) {
  if (OUTSIDE.includes(name)) return ["outside", name, 250, 12, null, null, null, 6.5, 120, 25, null];
  return ["in-house", name, ...(name === "K4" ? [700, 4] : [250, 12]), 40, 6, 3, null, null, null, null];
}

/** The run of eight lines, filled in from the enquiry to the route. */
export function eightLines(): TemplateData {
  const example = exampleData();
  return {
    ...EMPTY_DATA,
    title: "Run T-08 of Tern Hollow Forge (invented)",
    cover: {
      ...example.cover,
      run: "T-08",
      furnaceKg: 12,
      furnaceLength: 1000,
    },
    lines: EIGHT.map((line) => ({
      ...line,
      yield: 0.93,
      confidence: 0.9,
    })) as unknown as TemplateData["lines"],
    recipes: LINES.map(([name]) => ({ tempers: 2, hours: name === "K4" ? 1 : 2, ...APART[name] })),
    steels: LINES.map(([name, , , , , , , , , , thickness], at) => [
      `S${at + 1}`,
      thickness < 4 ? "flat bar, ground" : "flat bar, hot rolled",
      "annealed",
      at < 5 ? "Brackwater Steel Yard" : "Old Quay Metals",
      name === "K1" ? 10 : 20,
      "3.1",
    ]),
    heats: LINES.map(([, , , steel], at) => [`S${at + 1}`, steel, `H-${100 + at}`]),
    prices: LINES.map((_, at) => [6 + at / 2, "2026-09-01"]),
    blanks: LINES.map(blankOf),
    tang: LINES.map(([name]) => (FORGED.includes(name) ? 120 : null)),
    operations: LINES.flatMap(([name]) => [
      [name, "saw and profile", "saw", 30, 20, 1, null],
      [name, "harden and temper", "furnace", 45, 12, 0.97, null],
      [name, "grind, finish, inspect", "grinder", 60, 60, 0.96, "belts"],
    ]),
    batches: LINES.map(([name], at) => [`B${at + 1}`, ...batchOf(name)]),
    costs: LINES.map(() => [1.6, 0.97, "unit", 2.2, 5, 9, 2, 0.35]),
    enquiry: LINES.map(([, , , , good]) => [
      "Low Meadow Guild",
      "sharp",
      "satin",
      null,
      null,
      null,
      good,
      "home",
      null,
    ]),
    leadTimes: LINES.map(() => "7 weeks"),
  };
}
