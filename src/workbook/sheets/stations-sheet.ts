import { GRINDS } from "../../core/shape/grinds";
import type { SheetModel, WordList } from "../model/sheet-model";
import type { Lines } from "./lines-sheet";
import { sectionAsks } from "./parts/section-asks";
import {
  FORMAT,
  fixedBlock,
  fixedName,
  heading,
  helperSheet,
  mark,
  note,
  type Row,
  title,
  typed,
  worked,
} from "./parts/sheet-parts";
import type { TemplateData } from "./template-data";

const NAME = "Stations";
const STATIONS = 10;
const TOP = 3;
/** Line and section, marks, headings, stations, an empty row. */
const BLOCK = STATIONS + 5;
const SIZES = [
  "From heel mm",
  "Width mm",
  "Thickness mm",
  "Behind edge mm",
  "Fuller wide mm",
  "Fuller deep mm",
  "Bevel height mm",
  "Radius or bulge mm",
  "Flat or rib width mm",
  "Rib height mm",
] as const;
const RESULT = SIZES.length + 1;
/** What is worked out of a block: heading, number format, function and the place of the figure in its answer. */
const RESULTS = [
  ["Volume mm³", FORMAT.whole, "STATIONS", 1],
  ["Blade g", FORMAT.whole, "STATIONS", 2],
  ["Balance mm", FORMAT.tenth, "STATIONS", 3],
  ["Inertia kg m²", "0.0000", "STATIONS", 4],
  ["Stiffness N/mm", FORMAT.hundredth, "FLEX", 2],
  ["Sets at N", FORMAT.whole, "FLEX", 6],
  ["Bend at set °", FORMAT.whole, "FLEX", 8],
  ["Rings at Hz", FORMAT.tenth, "RING", 1],
  ["Quiet near heel mm", FORMAT.whole, "RING", 2],
  ["Quiet near tip mm", FORMAT.whole, "RING", 3],
] as const;
type Figure = (typeof RESULTS)[number];
const SECTIONS = GRINDS.map(({ word }) => word);
/** Where the blade is loaded to bend it, as a share of its length: a point cannot bear a load. */
const LOADED = 0.9;

const rowsOf = (block: number) => {
  const top = TOP + block * BLOCK;
  return { line: top, grind: top + 1, headings: top + 3, first: top + 4 };
};

type Sword = TemplateData["swords"][number] | undefined;

function figureCell(lines: Lines, block: number, [, , fn, place]: Figure): string {
  const { line, grind, first } = rowsOf(block);
  const size = (column: number) => fixedBlock(first, column, STATIONS);
  const named = fixedName(line, 1);
  const [x, width, thickness, edge, fullerWidth, fullerDepth, bevel, curve, flat, rib] = SIZES.map((_, at) =>
    size(at),
  );
  const section = [fixedName(grind, 1), edge, lines.lookup("steel", named), bevel, curve];
  const given = [x, width, thickness, ...section, fullerWidth, fullerDepth].join(",");
  const [heel, tip] = [`MIN(${size(0)})`, `MAX(${size(0)})`];
  const own = {
    STATIONS: "",
    FLEX: `${lines.lookup("aim", named)},,${heel}+${LOADED}*(${tip}-${heel}),${heel},,`,
    RING: ",,,",
  };
  const call = `BLADE.${fn}(${given},${own[fn]}${flat},${rib})`;
  return `=IF(OR(${named}="",COUNT(${size(0)})<2),"",INDEX(${call},1,${place}))`;
}

function stationRow(sword: Sword, lines: Lines, block: number, index: number): Row {
  const sizes = SIZES.map((_, column) => typed(sword?.stations[index]?.[column] ?? null, FORMAT.tenth));
  const result = RESULTS[index];
  if (result === undefined) return sizes;
  const [name, format] = result;
  return [...sizes, undefined, heading(name), worked(figureCell(lines, block, result), format)];
}

/** Columns of the list of all blocks beside them: line, volume, mass. */
const LISTED = RESULT + 3;

function blockRows(sword: Sword, line: string, lines: Lines, block: number): Row[] {
  const end: Row = [undefined, undefined, undefined];
  return [
    [heading("Line"), typed(line)],
    [
      heading("Section"),
      typed(sword?.grind ?? null),
      note(`=${sectionAsks(fixedName(rowsOf(block).grind, 1))}`),
    ],
    [...SIZES.map(() => mark("type")), ...end.slice(0, 1), mark("calc"), mark("calc")],
    SIZES.map((name) => heading(name)),
    ...Array.from({ length: STATIONS }, (_, index) => stationRow(sword, lines, block, index)),
    [],
  ];
}

/** Blades measured station by station: mass and balance where a straight taper does not do, how they bend and ring. */
export class Stations {
  constructor(
    private readonly data: TemplateData,
    private readonly lines: Lines,
    private readonly blocks: number,
  ) {}

  /** The list of the blocks, a row each, in the place of a column. */
  private listed(column: number): string {
    return `${NAME}!${fixedBlock(TOP, LISTED + column, this.blocks)}`;
  }

  /** Mass of a line's blade in g as measured; something else for a line that was not. */
  massOf(line: string, otherwise: string): string {
    const place = `MATCH(${line},${this.listed(0)},0)`;
    const mass = `INDEX(${this.listed(2)},${place})`;
    return `IF(COUNTIF(${this.listed(0)},${line})=0,${otherwise},IF(N(${mass})=0,${otherwise},${mass}))`;
  }

  /** Said of a line whose mass as measured is not that of a straight taper: the measured one counts. */
  otherMass(line: string, taper: string): string {
    const [measured, straight] = [`ROUND(${this.massOf(line, '""')},0)`, `ROUND(${taper},0)`];
    const said = `"; mass as measured at stations, a straight taper would have "&${straight}&" g"`;
    return `IFERROR(IF(${measured}=${straight},"",${said}),"")`;
  }

  /** Volume of a line's blade in mm³ as measured; empty for a line that was not. */
  volumeOf(line: string): string {
    return `IFERROR(INDEX(${this.listed(1)},MATCH(${line},${this.listed(0)},0)),"")`;
  }

  private list(rows: Row[]): Row[] {
    const listing = Array.from({ length: this.blocks }, (_, block): Row => {
      const { line, first } = rowsOf(block);
      const [name, volume, mass] = [
        fixedName(line, 1),
        fixedName(first, RESULT + 1),
        fixedName(first + 1, RESULT + 1),
      ];
      return [
        worked(`=IF(${name}="","",${name})`),
        worked(`=${volume}`, FORMAT.whole),
        worked(`=${mass}`, FORMAT.whole),
      ];
    });
    const named: Row = [heading("Line"), heading("Volume mm³"), heading("Blade g")];
    const beyond = (row: Row) => [...row, ...Array.from({ length: LISTED - row.length }, () => undefined)];
    return rows.map((row, at) => {
      const own = at === TOP - 1 ? named : listing[at - TOP];
      return own === undefined ? row : [...beyond(row), ...own];
    });
  }

  model(): SheetModel {
    const swords = Array.from({ length: this.blocks }, (_, block) => this.data.swords[block]);
    const names = this.data.lines.map(({ line }) => line);
    const rows: Row[] = [
      [title("Stations: a blade measured from heel to tip")],
      [
        note(
          "Width and thickness at each place, to the very tip; up to ten places. Empty rows are left out. Steel is that of the line.",
        ),
      ],
      [],
      ...swords.flatMap((sword, block) => blockRows(sword, lineOf(sword), this.lines, block)),
      [note("The blade alone: guard, grip and pommel are not in it.")],
      [
        note(
          "Bending: held at the first place, loaded across the flat at nine tenths of the length, at the hardness aimed at; of a sound blade, not a proof test.",
        ),
      ],
    ];
    const lists: WordList[] = swords.flatMap((_, block) => {
      const { line, grind } = rowsOf(block);
      return [
        { column: 1, words: names, rows: [line, line] as const },
        { column: 1, words: SECTIONS, rows: [grind, grind] as const },
      ];
    });
    return helperSheet(NAME, this.list(rows), {
      columnWidths: [...SIZES.map((_, at) => (at === 1 ? 110 : 84)), 20, 110, 90, 20, 60, 84, 70],
      rowHeights: { 0: 28 },
      wordLists: lists,
      print: {},
    });
  }
}

/** A sword of the demo begins its name with its line. */
function lineOf(sword: Sword): string {
  return sword?.name.split(" ")[0] ?? "";
}
