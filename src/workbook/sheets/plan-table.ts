import { attemptOr } from "../../core/refusal";
import { densityOf } from "../../core/steel/density";
import { PLAN_HEADINGS } from "../../functions/run/plan-headings";
import type { LiveWorkbook } from "../file/read/live-workbook";
import { isPlanning } from "../model/plan-names";
import { BLANK, type HeldCell, PlanSheet } from "./plan-sheet";

const MM3_PER_CM3 = 1000;

type PlanKey = keyof typeof PLAN_HEADINGS;

/** Headings of the workbook by what they are to RUN_PLAN; those of Lines, Recipe, Cut list and Costs. */
const BY_LINE: Readonly<Record<string, Readonly<Partial<Record<PlanKey, string>>>>> = {
  Lines: {
    name: "Line",
    use: "Use",
    steel: "Steel",
    good: "Good wanted",
    yieldShare: "Yield",
    confidence: "Confidence",
    length: "Length mm",
    width: "Width mm",
    thickness: "Thickness mm",
    grind: "Grind",
    tipWidth: "Tip width mm",
    tipThickness: "Tip thickness mm",
    edge: "Behind edge mm",
    bevelHeight: "Bevel height mm",
    curve: "Radius or bulge mm",
    flatWidth: "Flat or rib width mm",
    ribHeight: "Rib height mm",
    target: "Aim HRC",
    quench: "Quench",
  },
  Recipe: {
    sectionMm: "Hardened mm",
    hardenC: "Harden at, chosen °C",
    temperCycles: "Tempers",
    temperHours: "Temper hours",
    knownC: "Known °C",
    knownHrc: "Known HRC",
    clayMm: "Clay mm",
    clayFromMm: "Clay from mm",
    quenchToC: "Sub-zero °C",
    subZeroHours: "Sub-zero h",
  },
  "Cut list": {
    blankLength: "Blank length mm",
    blankWidth: "Width mm",
    blankThickness: "Thickness mm",
    barLength: "Bar mm",
    priceKg: "Price a kg",
  },
  Costs: {
    hoursFirst: "First piece h",
    rate: "Learning rate",
    model: "Learning model",
    setUpHours: "Set-up h",
    costAStart: "Belts a start",
    margin: "Margin, share of price",
  },
};

/** Figures of the cover that hold for every line. */
const ON_COVER: Readonly<Partial<Record<PlanKey, string>>> = {
  kerf: "Kerf of the saw mm",
  trim: "Trim a bar mm",
  hourRate: "Labour an hour",
  overheadRate: "Overhead an hour",
  energyPrice: "Price a kWh",
  priceStep: "Prices rounded to",
};

const figureOf = ({ value }: HeldCell) => (typeof value === "number" ? value : 0);

/** What the heat batches of a line say: its furnace, or the charge of whoever hardens it. */
function ofBatches(batches: PlanSheet, line: unknown): Partial<Record<PlanKey, number>> {
  const rows = batches.rowsWith("Line").filter((row) => batches.under("Line", row).value === line);
  const sum = (heading: string) => rows.reduce((all, row) => all + figureOf(batches.under(heading, row)), 0);
  const [first] = rows;
  if (first === undefined) return {};
  const outside = sum("Outside charge");
  const loads = sum("Loads");
  const held = loads === 0 ? 0 : (sum("Holding kWh") + sum("Temper kWh")) / loads;
  const given = (value: number) => (value === 0 ? undefined : value);
  return Object.fromEntries(
    Object.entries({
      hardenMass: given(figureOf(batches.under("g a piece at hardening", first))),
      piecesALoad: given(figureOf(batches.under("Pieces a load", first))),
      holdEnergy: given(held),
      outsideHeat: given(outside),
    }).filter(([, value]) => value !== undefined),
  );
}

/** A temper typed over the one that is worked out was chosen by the smith. */
function chosenTemper(lines: PlanSheet, row: number): HeldCell {
  const temper = lines.under("Temper °C", row);
  return temper.isFormula ? BLANK : temper;
}

/** The finished volume of a forged blade, its tang included, as RUN_PLAN takes it; nothing for a line that is cut. */
function forgedVolume(cuts: PlanSheet, row: number): number | undefined {
  const blade = figureOf(cuts.under("Forged: blade mm³", row));
  const grade = cuts.under("Grade", row).value;
  if (blade === 0 || typeof grade === "boolean" || grade === undefined) return undefined;
  const tang = figureOf(cuts.under("Forged: tang g", row));
  const density = attemptOr(undefined, () => densityOf(grade).value);
  return density === undefined ? undefined : blade + (tang * MM3_PER_CM3) / density;
}

/** Whether a workbook is laid out as a planning workbook. */
export const isPlan = ({ main }: LiveWorkbook): boolean => isPlanning(main.listed);

/**
 * The lines of a planning workbook as the table that RUN_PLAN reads, headings first: what is typed on Lines, Recipe, Cut
 * list, Heat batches, Costs and the cover, brought together line by line.
 */
export function planTable(live: LiveWorkbook): (number | string | boolean | undefined)[][] {
  const sheets = new Map(live.sheets.map((sheet) => [sheet.listed.name, new PlanSheet(live, sheet)]));
  const sheetNamed = (name: string) => {
    const found = sheets.get(name);
    if (found === undefined) throw new RangeError(`a planning workbook has a sheet ${name}`);
    return found;
  };
  const lines = sheetNamed("Lines");
  const rows = lines.rowsWith("Line").map((row) => {
    const byLine = Object.entries(BY_LINE).flatMap(([name, headings]) =>
      Object.entries(headings).map(
        ([key, heading]) => [key, sheetNamed(name).under(heading, row).value] as const,
      ),
    );
    const cover = Object.entries(ON_COVER).map(
      ([key, label]) => [key, sheetNamed("Cover").beside(label).value] as const,
    );
    const goodOnes =
      figureOf(sheetNamed("Costs").under("Fittings a good one", row)) +
      figureOf(sheetNamed("Costs").under("Packing a good one", row));
    return new Map<string, number | string | boolean | undefined>([
      ...byLine,
      ...cover,
      ["chosenC", chosenTemper(lines, row).value],
      ["forgedVolume", forgedVolume(sheetNamed("Cut list"), row)],
      ["costAGoodOne", goodOnes],
      ...Object.entries(ofBatches(sheetNamed("Heat batches"), lines.under("Line", row).value)),
    ]);
  });
  const keys = (Object.keys(PLAN_HEADINGS) as PlanKey[]).filter((key) =>
    rows.some((row) => row.get(key) !== undefined),
  );
  return [keys.map((key) => PLAN_HEADINGS[key].label), ...rows.map((row) => keys.map((key) => row.get(key)))];
}
