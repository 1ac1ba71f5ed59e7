import type { SheetModel } from "../model/sheet-model";
import type { Batches } from "./batches-sheet";
import type { Cover } from "./cover-sheet";
import type { CutList } from "./cut-list-sheet";
import type { Lines } from "./lines-sheet";
import { bothScales, type DocField, docSheet, section, stated, TO_AGREE, taken } from "./parts/doc-rows";
import { heading, note, type Row, words, worked } from "./parts/sheet-parts";
import { DATE_FORMAT } from "./parts/table-sheet";
import type { Route } from "./route-sheet";
import type { Steels } from "./steels-sheet";

const STEPS = 8;
const SKETCH_ROWS = 7;
const WIDTHS = [184, 196, 126, 190];
const NUMBERS_A_ROW = 4;
/** Room for the numbers of one page; more starts need a second sheet. */
const NUMBERS = 64;

export interface TravellerSources {
  readonly cover: Cover;
  readonly lines: Lines;
  readonly cuts: CutList;
  readonly steels: Steels;
  readonly batches: Batches;
  readonly route: Route;
}

function headFields({ cover, lines, cuts, steels }: TravellerSources, index: number): DocField[] {
  const stock = cuts.at("steel", index);
  const of = (key: Parameters<Lines["lookup"]>[0]) => lines.at(key, index);
  const size = `${of("length")}&" × "&${of("width")}&" × "&${of("thickness")}&" mm"`;
  return [
    taken("Run, revision", `${cover.at("run")}&" "&${cover.at("revision")}`),
    taken("Item", of("item")),
    taken("Steel", of("steel")),
    taken("Heat no.", `IF(${stock}="","",${steels.lookup("heat", stock)})`),
    taken("Blade", size),
    taken("Due", cover.at("due"), DATE_FORMAT),
    taken("Good wanted", of("good"), "0"),
    taken("Starts", of("starts"), "0"),
  ];
}

function targetFields({ lines, batches }: TravellerSources, index: number): DocField[] {
  const use = lines.at("use", index);
  const band = (column: number) => `INDEX(BLADE.BAND(${use}),1,${column})`;
  const batch = (key: Parameters<Batches["lookup"]>[0]) =>
    `INDEX(${batches.block(key)},MATCH(${lines.at("line", index)},${batches.block("line")},0))`;
  const hot = (label: string, cell: string, more = ""): DocField => ({
    label,
    formula: `IFNA(IF(ISNUMBER(${cell}),${bothScales(cell)}${more},"${TO_AGREE}"),"${TO_AGREE}")`,
  });
  return [
    taken("HRC low to high", lines.at("band", index)),
    taken("Aim HRC", lines.at("aim", index), "0"),
    hot(
      "Harden at",
      batch("harden"),
      `&IF(ISNUMBER(${batch("soak")}),", "&ROUND(${batch("soak")},0)&" min","")`,
    ),
    taken("Quench", lines.at("quench", index)),
    hot("Temper", batch("temper"), `&", "&IF(N(${batch("cycles")})=0,1,${batch("cycles")})&" ×"`),
    {
      label: "Edge, each side",
      formula: `IF(${band(5)}="","${TO_AGREE}",${band(5)}&"° to "&${band(6)}&"°")`,
    },
    {
      label: "Behind the edge",
      formula: `IF(${band(7)}="","${TO_AGREE}",${band(7)}&" to "&${band(8)}&" mm")`,
    },
    stated("Test hardness at", "tang or ricasso, ground clean"),
  ];
}

function stepRow({ route }: TravellerSources, named: string, step: number): Row {
  const first = `MATCH(${named},${route.block("line")},0)`;
  const steps = `COUNTIF(${route.block("line")},${named})`;
  const of = (key: Parameters<Route["block"]>[0]) => `INDEX(${route.block(key)},${first}+${step - 1})`;
  const when = (formula: string) => words(`=IF(OR(${named}="",${steps}<${step}),"",${formula})`);
  const time = `${of("place")}&": "&ROUNDUP(${of("quantity")},0)&" in, "&N(${of("each")})&" min each, set-up "&N(${of("setUp")})&" min"`;
  return [when(`"☐ ${step} "&${of("operation")}`), when(time), words(), words()];
}

const numberRows = ({ cover, lines }: TravellerSources, index: number, named: string): Row[] =>
  Array.from({ length: NUMBERS / NUMBERS_A_ROW }, (_, row) =>
    Array.from({ length: NUMBERS_A_ROW }, (__, column) => {
      const number = row * NUMBERS_A_ROW + column + 1;
      const starts = lines.at("starts", index);
      return worked(
        `=IF(${named}="","",IF(${number}>${starts},"","☐ "&${cover.at("run")}&"-"&${named}&"-${String(number).padStart(2, "0")}"))`,
      );
    }),
  );

function page(sources: TravellerSources, index: number, start: number): Row[] {
  const named = `$B$${start + 1}`;
  const line = sources.lines.at("line", index);
  const starts = sources.lines.at("starts", index);
  return [
    [heading("Traveller, line"), worked(`=IF(${line}="","",${line})`)],
    ...section("What it is", headFields(sources, index), named),
    ...section("What it must become", targetFields(sources, index), named),
    [{ content: "Sketch", role: "title" }],
    ...Array.from({ length: SKETCH_ROWS }, (): Row => []),
    ["Step", "Where, how many, how long", "Good out, scrap", "Initials, date, remark"].map(heading),
    ...Array.from({ length: STEPS }, (_, step) => stepRow(sources, named, step + 1)),
    [
      heading("Blade numbers"),
      words(
        `=IF(${named}="","",IF(${starts}>${NUMBERS},"numbers above ${NUMBERS}: use a second sheet","tick when good"))`,
      ),
    ],
    ...numberRows(sources, index, named),
    [note("As quenched a blade is brittle: temper first. Follow local codes and licensed practice.")],
  ];
}

/** What walks with the blades through the shop, a page a line. */
export function travellerSheet(sources: TravellerSources, count: number): SheetModel {
  const rows: Row[] = [];
  const breaksAfter: number[] = [];
  for (let index = 0; index < count; index += 1) {
    rows.push(...page(sources, index, rows.length));
    if (index < count - 1) breaksAfter.push(rows.length - 1);
  }
  return docSheet("Traveller", rows, { columnWidths: WIDTHS, rowHeights: {}, print: { breaksAfter } });
}
