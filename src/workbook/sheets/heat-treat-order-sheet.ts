import type { SheetModel } from "../model/sheet-model";
import { type Batches, lengthInFurnace, OUTSIDE } from "./batches-sheet";
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
  signatures,
  stated,
  TO_AGREE,
  taken,
  told,
} from "./parts/doc-rows";
import { CURVE_TITLE, CURVE_WIDTHS, curvePlace, curveRows } from "./parts/order-curve";
import { inMillimetres, millimetresOr0, type Row } from "./parts/sheet-parts";
import { DATE_FORMAT } from "./parts/table-sheet";
import type { Recipes } from "./recipe-sheet";
import type { Steels } from "./steels-sheet";

interface Sources {
  readonly cover: Cover;
  readonly lines: Lines;
  readonly recipes: Recipes;
  readonly cuts: CutList;
  readonly steels: Steels;
  readonly batches: Batches;
}

/** Cells of one batch by name. */
interface Named {
  readonly batch: (key: Parameters<Batches["lookup"]>[0]) => string;
  readonly line: (key: Parameters<Lines["lookup"]>[0]) => string;
  readonly recipe: (key: Parameters<Recipes["lookup"]>[0]) => string;
  readonly steel: (key: Parameters<Steels["lookup"]>[0]) => string;
}

function generalFields({ cover }: Sources, { batch, line }: Named): DocField[] {
  return [
    taken("Order no.", cover.at("treatNumber")),
    taken("Run, revision", `${cover.at("run")}&" "&${cover.at("revision")}`),
    taken("To", batch("treater")),
    // The day on the cover is the customer's: blades come back earlier, since they are still to be ground and fitted.
    taken("Due back", batch("backBy"), DATE_FORMAT),
    taken("Contact", cover.at("prepared")),
    taken("Part", `${batch("line")}&" "&${line("item")}`),
    told(
      "Pieces, mass each",
      `${batch("pieces")}&", "&IF(N(${batch("grams")})=0,"${TO_AGREE}",${batch("grams")}&" g")`,
    ),
    told(
      "Mass in all",
      `IF(N(${batch("kilograms")})=0,"${TO_AGREE}",TEXT(${batch("kilograms")},"0.0")&" kg")`,
    ),
  ];
}

/** The section as it goes into the quench, and the blade that is ground from it. */
function asSent(section: string, finished: string): string {
  const blade = inMillimetres(finished);
  return `${lengthWords(section)}&IFERROR(IF(${section}>${blade},", finished "&ROUND(${blade},2)&" mm",""),"")`;
}

/** What the piece needs of the furnace: with its tang, as wide as the blade, as thick as it is sent. */
function overall(cover: Cover, { line, recipe }: Named): string {
  const length = lengthInFurnace(cover, line("length"));
  const rest = [inMillimetres(line("width")), recipe("section")].map((size) => `ROUND(${size},1)`);
  const size = [`ROUND(${length},0)`, ...rest].join('&" × "&');
  return `IFERROR(IF(${millimetresOr0(line("length"))}=0,"${TO_AGREE}",${size}&" mm, tang counted in"),"${TO_AGREE}")`;
}

function materialFields({ cover }: Sources, cells: Named): DocField[] {
  const { batch, line, recipe, steel } = cells;
  return [
    taken("Grade", batch("grade")),
    taken("Standard", `INDEX(BLADE.STEEL(${batch("grade")}),1,3)`),
    heatNumber(steel("heat")),
    taken("Prior condition", steel("condition")),
    told("Thickest as sent", asSent(recipe("section"), line("thickness"))),
    stated("Edge as sent", "left thick: thickness to be agreed"),
    told("Overall as sent", overall(cover, cells)),
    stated("Stress relieved"),
  ];
}

function processFields({ batch, line, recipe }: Named): DocField[] {
  const harden = recipe("harden");
  const soak = `IF(ISNUMBER(${recipe("soak")}),${recipe("soak")}&" min at heat","${TO_AGREE}")`;
  const furnace = `IF(ISNUMBER(${recipe("furnace")}),", "&${recipe("furnace")}&" min in the furnace","")`;
  return [
    stated("Process", "harden and temper; the hardness is required, temperatures are suggested"),
    stated("Protection", "vacuum, neutral salt or wrapped"),
    told(
      "Normalise first",
      `IF(ISNUMBER(${recipe("normalise")}),${bothScales(recipe("normalise"))}&", cooled in air","no: none is published for this steel")`,
    ),
    told(
      "Preheat",
      `IF(${batch("preheat")}="","as the furnace needs",IF(ISNUMBER(${batch("preheat")}),${bothScales(batch("preheat"))},${batch("preheat")}))`,
    ),
    told("Austenitise", `IF(ISNUMBER(${harden}),${bothScales(harden)}&", ± 10 °C (18 °F)","${TO_AGREE}")`),
    told("Soak", `${soak}&${furnace}`),
    told("Quench", recipe("quench")),
    told("Clay", recipe("clayWords")),
    told("Sub-zero", recipe("subZero")),
    stated("Temper within", "1 h of the quench, blade at room temperature"),
    told("Tempers, suggested", `IF(ISNUMBER(${line("temperF")}),${recipe("temperWords")},"${TO_AGREE}")`),
    told("Hardens through", `${recipe("through")}&" in this quench, by estimate"`),
  ];
}

function resultFields({ batch, line }: Named): DocField[] {
  return [
    told("Aim HRC", aimWords(line)),
    told("HRC low to high", bandWords(line)),
    stated("Test method", "Rockwell C, ISO 6508-1 or ASTM E18"),
    stated("Place of test", "tang, ricasso or cheek, ground clean; never the edge"),
    told(
      "Pieces tested",
      `MIN(${batch("pieces")},MAX(3,ROUNDUP(${batch("pieces")}/5,0)))&", three readings each"`,
    ),
    stated("Straightness", "1 mm in 100 mm at most"),
    stated("Straightening", "hot or clamped in the temper; no peening"),
    stated("Decarburised skin", "0.1 mm a side at most"),
    stated("Surface, edges", "clean, dry, oiled; no blasting or tumbling"),
    stated("Marks", "keep the blade numbers legible"),
  ];
}

const reportFields: readonly DocField[] = [
  stated("Furnace chart", "yes, with the batch"),
  stated("Actual treatment", "temperatures, times, quench"),
  stated("Readings", "each, with place and blade number"),
  stated("Certificate", "of conformity, with the lot no."),
  stated("Straightness", "each piece outside the limit"),
  stated("Price", "per lot, minimum and setting up named"),
];

/** Rows of the page in front of its curve, the head left out. */
function rowsBeforeCurve(sources: Sources, cells: Named, named: string): Row[] {
  return [
    ...section("General", generalFields(sources, cells), named),
    ...section("Material", materialFields(sources, cells), named),
    ...section("Treatment", processFields(cells), named),
    ...section("Result", resultFields(cells), named),
  ];
}

/** Cells of the batch that a page is about. */
function cellsOf({ batches, lines, recipes, cuts, steels }: Sources, page: number): Named {
  const found = `MATCH(${page + 1},${batches.block("page")},0)`;
  const batch: Named["batch"] = (key) => `INDEX(${batches.block(key)},${found})`;
  const stock = cuts.lookup("steel", batch("line"));
  return {
    batch,
    line: (key) => lines.lookup(key, batch("line")),
    recipe: (key) => recipes.lookup(key, batch("line")),
    steel: (key) => `IF(${stock}="","",${steels.lookup(key, stock)})`,
  };
}

function body(sources: Sources, page: number, named: string, row: number): Row[] {
  const cells = cellsOf(sources, page);
  const { line, recipe } = cells;
  const ordered = { grade: cells.batch("grade"), line, recipe, named };
  const before = rowsBeforeCurve(sources, cells, named);
  return [
    ...before.slice(0, -1),
    [...(before.at(-1) ?? []), ...CURVE_TITLE.slice(before.at(-1)?.length)],
    ...curveRows(ordered, row + before.length),
    ...section("Report", reportFields, named),
    ...signatures("For the forge, date", "For the treater, date"),
  ];
}

/** The order to whoever hardens the blades, a page for each line of each batch that goes out of the house. */
export function heatTreatOrderSheet(sources: Sources, count: number): SheetModel {
  const { batches, cover } = sources;
  const before = rowsBeforeCurve(sources, cellsOf(sources, 0), "").length;
  return paperSheet({
    name: "Heat-treat order",
    cover,
    paper: "Heat-treat order",
    label: "Batch",
    count,
    subject: (page) =>
      `IFERROR(INDEX(${batches.block("batch")},MATCH(${page + 1},${batches.block("page")},0)),"")`,
    body: (page, named, row) => body(sources, page, named, row),
    besideWidths: CURVE_WIDTHS,
    merged: (row) => [curvePlace(row + before)],
    number: (page) => {
      const treater = `INDEX(${batches.block("treater")},MATCH(${page + 1},${batches.block("page")},0))`;
      const ofSame = `COUNTIFS(${batches.block("treater")},${treater},${batches.block("page")},">0"`;
      return [`${ofSame},${batches.block("page")},"<=${page + 1}")`, `${ofSame})`];
    },
    filled: `COUNTIF(${batches.block("where")},"${OUTSIDE}")`,
  });
}
