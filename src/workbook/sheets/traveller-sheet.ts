import type { SheetModel } from "../model/sheet-model";
import type { Batches } from "./batches-sheet";
import type { Cover } from "./cover-sheet";
import type { CutList } from "./cut-list-sheet";
import type { Lines } from "./lines-sheet";
import {
  aimWords,
  bandWords,
  bothScales,
  type DocField,
  heatNumber,
  lengthWords,
  paperSheet,
  section,
  stated,
  TO_AGREE,
  taken,
  told,
} from "./parts/doc-rows";
import { heading, inFront, note, type Row, words, worked } from "./parts/sheet-parts";
import { DATE_FORMAT } from "./parts/table-sheet";
import type { Recipes } from "./recipe-sheet";
import type { Route } from "./route-sheet";
import { MAX_STEPS, type StandardRoute } from "./standard-route-sheet";
import type { Steels } from "./steels-sheet";

/** A box to tick, drawn in letters that every font has. */
const TICK = "[  ]";
const SKETCH_ROWS = 4;
const WIDTHS = [166, 200, 140, 190];
const [CELLS_A_ROW, NUMBERS_A_CELL] = [WIDTHS.length, 3];
/** Room for the numbers of one page; more starts need a second sheet. */
const NUMBERS = 48;

export interface TravellerSources {
  readonly cover: Cover;
  readonly lines: Lines;
  readonly recipes: Recipes;
  readonly cuts: CutList;
  readonly steels: Steels;
  readonly batches: Batches;
  readonly route: Route;
  readonly standard: StandardRoute;
}

function headFields({ cover, lines, cuts, steels, batches }: TravellerSources, index: number): DocField[] {
  const stock = cuts.at("steel", index);
  const of = (key: Parameters<Lines["lookup"]>[0]) => lines.at(key, index);
  const size = (["length", "width", "thickness"] as const).map((key) => lengthWords(of(key)));
  const others = `(COUNTIF(${batches.block("line")},${of("line")})-1)`;
  const batch = `INDEX(${batches.block("batch")},MATCH(${of("line")},${batches.block("line")},0))`;
  return [
    taken("Run, revision", `${cover.at("run")}&" "&${cover.at("revision")}`),
    taken("Item", of("item")),
    taken("Steel", of("steel")),
    heatNumber(`IF(${stock}="","",${steels.lookup("heat", stock)})`),
    told("Blade", size.join('&" × "&')),
    taken("Due", cover.at("due"), DATE_FORMAT),
    told("Good wanted, starts", `${of("good")}&" of "&${of("starts")}&" started"`),
    told("Heat batch", `IFNA(${batch}&IF(${others}>0," and "&${others}&" more",""),"${TO_AGREE}")`),
  ];
}

function targetFields({ lines, recipes }: TravellerSources, index: number): DocField[] {
  const use = lines.at("use", index);
  const band = (column: number) => `INDEX(BLADE.BAND(${use}),1,${column})`;
  const recipe = (key: Parameters<Recipes["at"]>[0]) => recipes.at(key, index);
  const harden = recipe("harden");
  // The shop hand sees what the plan warns of, a temper in the brittle range before all.
  const caution = `SUBSTITUTE(${lines.at("caution", index)}," more)"," more on the sheet Recipe)")`;
  const soak = `IF(ISNUMBER(${recipe("furnace")}),", "&${recipe("furnace")}&" min in the furnace",IF(ISNUMBER(${recipe("soak")}),", "&${recipe("soak")}&" min at heat",""))`;
  const open = (cell: string) => `IF(${cell}="","${TO_AGREE}",${cell})`;
  return [
    told(
      "HRC low to high",
      bandWords((key) => lines.at(key, index)),
    ),
    told(
      "Aim HRC",
      aimWords((key) => lines.at(key, index)),
    ),
    told(
      "Harden at",
      `IF(ISNUMBER(${harden}),${bothScales(harden)}&${soak}&", "&${lengthWords(recipe("section"))}&" thick","${TO_AGREE}")`,
    ),
    told("Quench", recipe("quench")),
    told(
      "Clay, sub-zero",
      `IF(AND(${recipe("clayWords")}="none",${recipe("subZero")}="none"),"none","clay "&${recipe("clayWords")}&"; sub-zero "&${recipe("subZero")})`,
    ),
    told("Tempers", open(recipe("temperWords"))),
    told(
      "Edge, each side",
      `IFERROR(IF(${band(5)}="","${TO_AGREE}",${band(5)}&"° to "&${band(6)}&"°"),"${TO_AGREE}")`,
    ),
    told(
      "Behind the edge",
      `IFERROR(IF(${band(7)}="","${TO_AGREE}",${band(7)}&" to "&${band(8)}&" mm"),"${TO_AGREE}")`,
    ),
    stated("Test hardness at", "tang, ricasso or cheek, ground clean"),
    told("Watch", `${recipe("through")}&IF(OR(${caution}="",${caution}="none"),"","; "&${caution})`),
  ];
}

/** Operation and time of one step: of the line's own route, else of the standard one. */
function stepRow(
  { lines, route, standard }: TravellerSources,
  index: number,
  named: string,
  step: number,
): Row {
  const first = `MATCH(${named},${route.block("line")},0)`;
  const steps = `COUNTIF(${route.block("line")},${named})`;
  const of = (key: Parameters<Route["block"]>[0]) => `INDEX(${route.block(key)},${first}+${step - 1})`;
  const usual = (key: Parameters<StandardRoute["at"]>[0]) => standard.at(key, step - 1);
  const when = (own: string, standing: string) =>
    words(
      `=IF(${named}="","",IF(${steps}>0,IF(${steps}<${step},"",${own}),IF(${usual("operation")}="","",${standing})))`,
    );
  const time = (place: string, pieces: string, each: string, setUp: string) =>
    `${place}&": "&ROUNDUP(${pieces},0)&" pieces in, "&ROUND(${each},0)&" min each, setting up "&N(${setUp})&" min"`;
  const size = (["length", "width"] as const).map((key) => `N(${lines.at(key, index)})`).join("*");
  const pieces = `N(${lines.at("starts", index)})*N(${usual("share")})`;
  const minutes = `(N(${usual("each")})+${size}/10000*N(${usual("area")}))`;
  return [
    when(`"${TICK} ${step} "&${of("operation")}`, `"${TICK} ${step} "&${usual("operation")}`),
    when(
      time(of("place"), of("quantity"), `N(${of("each")})`, of("setUp")),
      time(usual("place"), pieces, minutes, usual("setUp")),
    ),
    words(),
    words(),
  ];
}

/** A cell of numbers with a box before each, as many as are started; what is in front of all stands above them. */
function numbersFrom(first: number, starts: string, named: string): string {
  const boxes = Array.from({ length: NUMBERS_A_CELL }, (_, at) => {
    const number = String(first + at).padStart(2, "0");
    return `IF(${first + at}>${starts},"","${at === 0 ? "" : "  "}${TICK} ${number}")`;
  });
  return `=IF(${named}="","",${boxes.join("&")})`;
}

const numberRows = ({ lines }: TravellerSources, index: number, named: string): Row[] =>
  Array.from({ length: NUMBERS / NUMBERS_A_CELL / CELLS_A_ROW }, (_, row) =>
    Array.from({ length: CELLS_A_ROW }, (__, column) =>
      worked(
        numbersFrom((row * CELLS_A_ROW + column) * NUMBERS_A_CELL + 1, lines.at("starts", index), named),
      ),
    ),
  );

/** The first number in full and the last one, or that there are more than the page has room for. */
function numbersTold({ cover, lines }: TravellerSources, index: number, named: string): string {
  const starts = lines.at("starts", index);
  const run = `IF(${cover.at("run")}="","",${cover.at("run")}&"-")`;
  const all = `${run}&${named}&"-01 to -"&TEXT(${starts},"00")&": tick when good"`;
  return `=IF(${named}="","",IF(${starts}>${NUMBERS},"numbers above ${NUMBERS}: use a second sheet",${all}))`;
}

function body(sources: TravellerSources, index: number, named: string): Row[] {
  return [
    ...section("What it is", headFields(sources, index), named),
    ...section("What it must become", targetFields(sources, index), named),
    [heading("Sketch")],
    ...Array.from({ length: SKETCH_ROWS }, (): Row => []),
    ["Step", "Where, how many, how long", "Good out, scrap", "Initials, date, remark"].map(heading),
    ...Array.from({ length: MAX_STEPS }, (_, step) => stepRow(sources, index, named, step + 1)),
    [inFront("Blade numbers"), words(numbersTold(sources, index, named))],
    ...numberRows(sources, index, named),
    [note("As quenched a blade is brittle: temper first. Follow local codes and licensed practice.")],
  ];
}

/** What walks with the blades through the shop, a page a line. */
export function travellerSheet(sources: TravellerSources, count: number): SheetModel {
  const { lines } = sources;
  return paperSheet({
    name: "Traveller",
    cover: sources.cover,
    paper: "Traveller",
    label: "Line",
    count,
    subject: (page) => `IF(${lines.at("line", page)}="","",${lines.at("line", page)})`,
    body: (page, named) => body(sources, page, named),
    filled: `SUMPRODUCT(--(${lines.block("line")}<>""))`,
    widths: WIDTHS,
  });
}
