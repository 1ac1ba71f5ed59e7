import { rowOfLines } from "../../model/row-heights";
import type { SheetModel } from "../../model/sheet-model";
import type { Lines } from "../lines-sheet";
import {
  beside,
  blankRows,
  FORMAT,
  field,
  filled,
  fixedBlock,
  fixedName,
  headed,
  helperSheet,
  note,
  type Row,
  title,
  typed,
  words,
  worked,
} from "../parts/sheet-parts";
import sections from "../run-r07/sections.json";

const { rows: thick, clay } = sections;

/** First section of the run; its hardened depth stands in column DEPTH. */
export const FIRST_SECTION = 4;
export const DEPTH = 6;
const CLAY = FIRST_SECTION + thick.length + 1;
const FIRST_FIELD = CLAY + 2;
const PROFILE = 6;
/** Profile under clay: place, and three figures of hardness. */
export const FIRST_POINT = { row: CLAY + 5, column: PROFILE } as const;

const DEPTH_FORMAT = FORMAT.tenth;
const HARDNESS = FORMAT.whole;
const RESISTANCE = "0.0000";

function quenchedCells(formula: string): Row {
  return [worked(formula, DEPTH_FORMAT), filled(HARDNESS), filled(HARDNESS), filled(HARDNESS), words()];
}

function sectionRows(lines: Lines): Row[] {
  const column = (index: number) => fixedBlock(FIRST_SECTION, index, thick.length);
  const all = `=BLADE.SECTION_QUENCH(${[1, 2, 3, 4, 5].map(column).join(",")})`;
  const inHeight = [filled(DEPTH_FORMAT), filled(HARDNESS), filled(HARDNESS), filled(HARDNESS), words()];
  return [
    ...headed([
      ["Blade", "type"],
      ["Steel", "calc"],
      ["Width mm", "type"],
      ["Spine mm", "type"],
      ["Edge mm", "type"],
      ["Bath", "type"],
      ["Hard to mm", "calc"],
      ["Edge HRC", "calc"],
      ["Middle HRC", "calc"],
      ["Spine HRC", "calc"],
      ["Verdict", "calc"],
    ]),
    ...thick.map(
      ([blade = "", line = 0, width = 0, spine = 0, edge = 0, bath = ""], index): Row => [
        typed(blade),
        worked(`=${lines.at("steel", Number(line))}`),
        typed(width, FORMAT.tenth),
        typed(spine, FORMAT.tenth),
        typed(edge, FORMAT.tenth),
        typed(bath),
        ...(index === 0 ? quenchedCells(all) : inHeight),
      ],
    ),
  ];
}

const FIELDS = [
  "steel",
  "width",
  "spine",
  "edge",
  "bath",
  "guess",
  "line",
  "coat",
  "transfer",
  "measured",
] as const;
type Field = (typeof FIELDS)[number];

const at = (name: Field) => fixedName(FIRST_FIELD + FIELDS.indexOf(name), 1);
/** Row of the clay that fits the measured blade. */
export const FITTED_CLAY = FIRST_FIELD + FIELDS.length;
const fittedClay = fixedName(FITTED_CLAY, 1);
/** The measured hardened depth of the trial blade. */
export const MEASURED = FIRST_FIELD + FIELDS.indexOf("measured");

/** The blade under clay as the section functions take it; what is left open keeps its usual figure. */
function given(resistance: string): string {
  return [
    ...(["steel", "width", "spine", "edge", "bath"] as const).map(at),
    resistance,
    at("line"),
    at("coat"),
    at("transfer"),
  ].join(",");
}

function clayFields(): Row[] {
  return [
    field("Steel", typed(clay.steel), "type"),
    field("Width mm", typed(clay.width, FORMAT.tenth), "type", "edge to spine"),
    field("Spine mm", typed(clay.spine, FORMAT.tenth), "type"),
    field("Edge mm", typed(clay.edge, FORMAT.tenth), "type", "at the quench"),
    field("Bath", typed(clay.bath), "type"),
    field("Clay, first guess m²K/W", typed(clay.guess, RESISTANCE), "type"),
    field("Clay from mm", typed(clay.line, FORMAT.tenth), "type", "above the edge"),
    field("Thin coat below m²K/W", typed(clay.coat, RESISTANCE), "type"),
    field("Through the air s", typed(clay.transfer, FORMAT.tenth), "type"),
    field("Trial blade hard to mm", typed(clay.measured, FORMAT.tenth), "type", "etched, read from the edge"),
    field(
      "Clay that fits m²K/W",
      worked(`=INDEX(BLADE.SECTION_FIT(${given(at("guess"))},,,${at("measured")}),1,1)`, RESISTANCE),
      "calc",
    ),
    field(
      "Hard to mm, at the guess",
      worked(`=INDEX(BLADE.SECTION_QUENCH(${given(at("guess"))}),1,1)`, FORMAT.tenth),
      "calc",
    ),
    field(
      "Hard to mm, as fitted",
      worked(`=INDEX(BLADE.SECTION_QUENCH(${given(fittedClay)}),1,1)`, FORMAT.tenth),
      "calc",
    ),
  ];
}

function profileRows(): Row[] {
  const figures = [filled(FORMAT.tenth), filled(HARDNESS), filled(HARDNESS), filled(HARDNESS)];
  return [
    [title("Hardness from edge to spine, clay as fitted")],
    ...headed(["From edge mm", "Low HRC", "Likely HRC", "High HRC"].map((text) => [text, "calc"] as const)),
    [worked(`=BLADE.SECTION_PROFILE(${given(fittedClay)})`, FORMAT.tenth), ...figures.slice(1)],
    ...blankRows(clay.width - 1, figures),
  ];
}

const CALIBRATE =
  "No value for clay is published. Quench and etch one blade of the batch first and type how deep it hardened; clay, coat and bath differ from shop to shop.";

/** Whether the run's thickest sections harden, and a blade hardened at its edge only. */
export function sectionSheet(lines: Lines): SheetModel {
  const rows: Row[] = [
    [title("Section: how deep the quench hardens")],
    [
      note(
        "No figure is held for medium oil: work such a blade in slow oil and in fast, its own lies between.",
      ),
    ],
    ...sectionRows(lines),
    [],
    [title("Under clay: hard at the edge only")],
    [note(CALIBRATE)],
    ...beside(clayFields(), profileRows(), PROFILE),
  ];
  const heights = thick.map((_, index) => [FIRST_SECTION + index, rowOfLines(2)]);
  return helperSheet("Section", rows, {
    columnWidths: [170, 104, 56, 56, 56, 96, 64, 56, 60, 60, 330],
    rowHeights: { 0: 28, 2: rowOfLines(2), [CLAY + 3]: rowOfLines(3), ...Object.fromEntries(heights) },
  });
}
