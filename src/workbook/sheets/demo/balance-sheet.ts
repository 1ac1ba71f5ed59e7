import { cellName } from "../../../formula/addresses";
import { rowOfLines } from "../../model/row-heights";
import type { SheetModel } from "../../model/sheet-model";
import {
  beside,
  FORMAT,
  field,
  filled,
  fixedBlock,
  fixedName,
  headed,
  heading,
  helperSheet,
  note,
  type Row,
  title,
  typed,
  worked,
} from "../parts/sheet-parts";
import demo from "../run-r07/swords.json";

type Sword = (typeof demo.swords)[number];

const STATIONS = 4;
const PARTS = 5;
const FIRST_BLOCK = 4;
/** Title, the blade with its stations and the figures that follow from them, an empty row. */
const BLOCK_HEIGHT = 17;
const INERTIA = "0.000000";
/** Where the blade is loaded to bend it, as a share of its length: a point cannot bear a load. */
const LOADED = 0.9;

/** Rows of one sword's block, counted from the top of the sheet. */
export function swordRows(index: number) {
  const top = FIRST_BLOCK + index * BLOCK_HEIGHT;
  const parts = top + 3;
  const figures = parts + 5;
  return {
    top,
    grind: top + 1,
    hardness: top + 3,
    stations: top + 6,
    /** Volume, mass, balance and inertia of the blade, in columns 0 to 3. */
    blade: top + 6 + STATIONS + 1,
    /** Stiffness, load, way and bend at which a set begins, in columns 0 to 3. */
    flex: top + 6 + STATIONS + 3,
    /** First and second frequency and the quiet points between, in columns 0 to 3. */
    ring: top + 6 + STATIONS + 5,
    parts,
    /** Mass, balance and inertia of the whole sword. */
    whole: figures,
    held: figures + 1,
    partner: figures + 2,
    struck: figures + 3,
    effective: figures + 4,
    wanted: figures + 5,
    pommel: figures + 6,
  } as const;
}

type Rows = ReturnType<typeof swordRows>;

/** Column of the figures below the parts. */
export const FIGURE = PARTS + 1;

/** The arguments of STATIONS, up to the steel. */
function measured(rows: Rows): string {
  const column = (at: number) => fixedBlock(rows.stations, at, STATIONS);
  const [grind, steel] = [fixedName(rows.grind, 1), fixedName(rows.grind + 1, 1)];
  return `${column(0)},${column(1)},${column(2)},${grind},,${steel}`;
}

/** How the blade bends, held at the guard and loaded near the point. */
function flexRow(rows: Rows): Row {
  const places = fixedBlock(rows.stations, 0, STATIONS);
  const call = `BLADE.FLEX(${measured(rows)},,,,,${fixedName(rows.hardness, 1)},,${LOADED}*MAX(${places}))`;
  const figure = (column: number) => `=INDEX(${call},1,${column})`;
  return [
    worked(figure(2), FORMAT.hundredth),
    worked(figure(6), FORMAT.whole),
    worked(figure(7), FORMAT.whole),
    worked(figure(8), FORMAT.whole),
  ];
}

/** How the blade rings with tang, guard, grip and pommel on it. */
function ringRow({ parts }: Sword, rows: Rows): Row {
  const fittings = [3, 4, 5].map((at) => fixedBlock(rows.parts + 1, PARTS + at, parts.length));
  return [
    worked(`=BLADE.RING(${measured(rows)},,,,,${fittings.join(",")})`, FORMAT.tenth),
    filled(FORMAT.whole),
    filled(FORMAT.whole),
    filled(FORMAT.tenth),
  ];
}

function bladeRows(sword: Sword, rows: Rows): Row[] {
  const { steel, grind, hrc, stations } = sword;
  return [
    field("Section", typed(grind), "type"),
    field("Steel", typed(steel), "type"),
    field("Blade HRC", typed(hrc, FORMAT.whole), "type"),
    ...headed([
      ["From guard mm", "type"],
      ["Width mm", "type"],
      ["Thickness mm", "type"],
    ]),
    ...stations.map((station) => station.map((size) => typed(size, FORMAT.tenth))),
    ["Volume mm³", "Blade g", "Balance mm", "Inertia kg m²"].map(heading),
    [
      worked(`=BLADE.STATIONS(${measured(rows)})`, FORMAT.whole),
      filled(FORMAT.tenth),
      filled(FORMAT.tenth),
      filled(INERTIA),
    ],
    ["Stiffness N/mm", "Sets at N", "Bent by mm", "Bend at set °"].map(heading),
    flexRow(rows),
    ["First Hz", "Quiet, grip mm", "Quiet, point mm", "Second Hz"].map(heading),
    ringRow(sword, rows),
  ];
}

/** A bar lies with its length across the axis of the swing, a ball turns about its middle: textbook inertias. */
function ownInertia(row: number): string {
  const [form, size, mass] = [PARTS + 1, PARTS + 2, PARTS + 3].map((column) => cellName(row, column));
  return `=${mass}/1000*(${size}/1000)^2*IF(${form}="ball",0.1,1/12)`;
}

function partRows({ parts }: Sword, rows: Rows): Row[] {
  const blade = (column: number, format: string) => worked(`=${cellName(rows.blade, column)}`, format);
  return [
    ...headed([
      ["Part", "type"],
      ["Form", "type"],
      ["Long mm", "type"],
      ["Mass g", "type"],
      ["Balance mm", "type"],
      ["Own inertia", "calc"],
    ]),
    [
      heading("blade"),
      undefined,
      undefined,
      blade(1, FORMAT.tenth),
      blade(2, FORMAT.tenth),
      blade(3, INERTIA),
    ],
    ...parts.map(
      ([part = "", form = "", size = 0, mass = 0, place = 0], index): Row => [
        typed(part),
        typed(form),
        typed(size, FORMAT.tenth),
        typed(mass, FORMAT.tenth),
        typed(place, FORMAT.tenth),
        worked(ownInertia(rows.parts + 1 + index), INERTIA),
      ],
    ),
  ];
}

/** Mass, position and inertia of the first so many parts, as three arguments. */
function partLists(rows: Rows, count: number): string {
  return [3, 4, 5].map((column) => fixedBlock(rows.parts, PARTS + column, count)).join(",");
}

function figureRows({ parts, wanted }: Sword, rows: Rows): Row[] {
  const whole = [0, 1, 2].map((column) => fixedName(rows.whole, FIGURE + column)).join(",");
  const figure = (row: number) => fixedName(row, FIGURE);
  const bare = `BLADE.ASSEMBLY(${partLists(rows, parts.length)})`;
  const pommelAt = fixedName(rows.parts + parts.length, PARTS + 4);
  const pommel = `=BLADE.POMMEL(INDEX(${bare},1,1),INDEX(${bare},1,2),${pommelAt},${figure(rows.wanted)})`;
  return [
    [
      heading("Whole: g, balance, inertia"),
      worked(`=BLADE.ASSEMBLY(${partLists(rows, parts.length + 1)})`, FORMAT.whole),
      filled(FORMAT.tenth),
      filled(INERTIA),
    ],
    field("Held at mm", typed(demo.hand, FORMAT.whole), "type", "0 is the guard; behind it below 0"),
    field(
      "Centre of percussion mm",
      worked(`=BLADE.PERCUSSION_CENTRE(${whole},${figure(rows.held)})`, FORMAT.tenth),
      "calc",
      "rigid body: not the node of vibration",
    ),
    field("Struck at mm", typed(demo.struck, FORMAT.whole), "type"),
    field(
      "A target feels g",
      worked(`=BLADE.EFFECTIVE_MASS(${whole},${figure(rows.struck)})`, FORMAT.whole),
      "calc",
      "rigid body",
    ),
    field("Balance wanted mm", typed(wanted, FORMAT.whole), "type", "from the guard"),
    field("Pommel for that g", worked(pommel, FORMAT.whole), "calc", "at the place of the present one"),
  ];
}

function swordBlock(sword: Sword, index: number): Row[] {
  const rows = swordRows(index);
  const right = [...partRows(sword, rows), ...figureRows(sword, rows)];
  return [[title(sword.name)], ...beside(bladeRows(sword, rows), right, PARTS), []];
}

/** The run's swords from station and part to mass, balance, centre of percussion and pommel. */
export function balanceSheet(): SheetModel {
  const rows: Row[] = [
    [title("Balance: the swords, blade and fittings")],
    [
      note(
        "mm from the blade side of the guard, toward the point above 0. A bar counts its length, a ball its diameter.",
      ),
    ],
    [
      note(
        "Bending: held at the guard, loaded across the flat at nine tenths of the length, to where a sound blade begins to take a set: not a proof test.",
      ),
    ],
    [],
    ...demo.swords.flatMap(swordBlock),
  ];
  const heights = demo.swords.flatMap((_, index) => {
    const { grind, stations, blade, flex, ring } = swordRows(index);
    return [grind, stations - 2, blade - 1, flex - 1, ring - 1].map((row) => [row, rowOfLines(2)]);
  });
  return helperSheet("Balance", rows, {
    columnWidths: [84, 72, 78, 86, 12, 174, 70, 70, 76, 78, 104],
    rowHeights: { 0: 28, ...Object.fromEntries(heights) },
  });
}
