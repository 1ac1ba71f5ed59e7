import type { SheetModel } from "../model/sheet-model";
import type { Batches } from "./batches-sheet";
import type { Cover } from "./cover-sheet";
import type { CutList } from "./cut-list-sheet";
import type { Lines } from "./lines-sheet";
import {
  bothScales,
  type DocField,
  docSheet,
  section,
  signatures,
  stated,
  TO_AGREE,
  taken,
  temperature,
} from "./parts/doc-rows";
import { heading, note, type Row, worked } from "./parts/sheet-parts";
import { DATE_FORMAT } from "./parts/table-sheet";
import type { Steels } from "./steels-sheet";

interface Sources {
  readonly cover: Cover;
  readonly lines: Lines;
  readonly cuts: CutList;
  readonly steels: Steels;
  readonly batches: Batches;
}

/** Cells of one batch by name. */
interface Named {
  readonly batch: (key: Parameters<Batches["lookup"]>[0]) => string;
  readonly line: (key: Parameters<Lines["lookup"]>[0]) => string;
  readonly steel: (key: Parameters<Steels["lookup"]>[0]) => string;
}

const opened = (label: string, formula: string, format?: string): DocField => taken(label, formula, format);

function generalFields({ cover }: Sources, { batch, line }: Named): DocField[] {
  return [
    opened("Order no.", cover.at("treatNumber")),
    opened("Run, revision", `${cover.at("run")}&" "&${cover.at("revision")}`),
    opened("From", cover.at("forge")),
    opened("To", `IF(${batch("where")}="outside",${cover.at("treater")},${batch("where")})`),
    opened("Contact", cover.at("prepared")),
    opened("Due", cover.at("due"), DATE_FORMAT),
    opened("Part", `${batch("line")}&" "&${line("item")}`),
    stated("Drawing", "sketch on the traveller of the line"),
    opened("Pieces", batch("pieces"), "0"),
    opened("Mass each g", batch("grams"), "0"),
    opened("Mass in all kg", batch("kilograms"), "0.0"),
    opened("Racks or loads", batch("loads"), "0"),
  ];
}

function materialFields({ batch, line, steel }: Named): DocField[] {
  return [
    opened("Grade", batch("grade")),
    opened("Standard", `INDEX(BLADE.STEEL(${batch("grade")}),1,3)`),
    opened("Heat no.", steel("heat")),
    opened("Prior condition", steel("condition")),
    stated("Stress relieved before"),
    opened("Thickest section mm", batch("thickest"), "0.0"),
    opened("Thinnest section mm", `IF(N(${line("edge")})=0,${line("tipThickness")},${line("edge")})`, "0.0"),
    opened("Length mm", line("length"), "0"),
  ];
}

function processFields({ batch, line }: Named): DocField[] {
  const tempers = `IF(N(${batch("cycles")})=0,1,${batch("cycles")})&" × "&IF(N(${batch("hours")})=0,2,${batch("hours")})&" h"`;
  const subZero = `${bothScales(batch("subZero"))}&", "&${batch("subZeroHours")}&" h, straight after the quench"`;
  return [
    stated("Process", "harden and temper; temperatures are suggested, the hardness is required"),
    stated("Protection", "vacuum, neutral salt or wrapped: no scale, no loss of carbon"),
    temperature("Normalise first", batch("normalise")),
    { label: "Preheat", formula: `IF(N(${batch("preheat")})=0,"none",${bothScales(batch("preheat"))})` },
    {
      label: "Austenitise",
      formula: `IF(ISNUMBER(${batch("harden")}),${bothScales(batch("harden"))}&", ± 10 °C (18 °F)","${TO_AGREE}")`,
    },
    {
      label: "Soak",
      formula: `IF(ISNUMBER(${batch("soak")}),ROUND(${batch("soak")},0)&" min in the furnace, heating included","${TO_AGREE}")`,
    },
    opened("Quench", line("quench")),
    stated("Quench bath", "oil 50 °C (122 °F) to 65 °C (149 °F), gently stirred, edge first"),
    { label: "Sub-zero", formula: `IF(${batch("subZero")}="","none",${subZero})` },
    stated("Start temper within", "1 h of the quench, blade at room temperature"),
    {
      label: "Temper, suggested",
      formula: `IF(ISNUMBER(${batch("temper")}),${bothScales(batch("temper"))}&", "&${tempers},"${TO_AGREE}")`,
    },
    stated("Delay to sub-zero"),
  ];
}

function resultFields({ batch, line }: Named): DocField[] {
  return [
    opened("Aim HRC", line("aim"), "0"),
    opened("HRC low to high", line("band")),
    stated("Test method", "Rockwell C, ISO 6508-1 or ASTM E18, block read before and after"),
    stated("Tests a piece", "three, mean and range reported"),
    stated("Place of test", "tang or ricasso flat, ground clean; never the edge"),
    opened("Pieces tested", `MIN(${batch("pieces")},MAX(3,ROUNDUP(${batch("pieces")}/5,0)))`, "0"),
    stated("Straightness", "1 mm a 100 mm"),
    stated("Straightening", "hot before the temper or clamped in it; no peening of the edge"),
    stated("Decarburised skin", "0.1 mm a side at most"),
    stated("Surface", "as treated; clean, dry and oiled"),
    stated("Edges", "do not blast or tumble"),
    stated("Marks", "keep the blade numbers legible"),
  ];
}

const reportFields: readonly DocField[] = [
  stated("Furnace chart", "yes, with the batch"),
  stated("Actual temperatures", "hardening and each temper"),
  stated("Actual quench", "medium, its temperature"),
  stated("Readings", "each, with place and blade number"),
  stated("Straightness", "each piece outside the limit"),
  stated("Certificate of conformity", "yes"),
  stated("Treatment lot no.", "on papers and package"),
  stated("Price", "per lot, with minimum and set-up named"),
];

function page(sources: Sources, index: number, start: number): Row[] {
  const named = `$B$${start + 1}`;
  const { batches, lines, cuts, steels } = sources;
  const batch: Named["batch"] = (key) => batches.at(key, index);
  const stock = cuts.lookup("steel", batch("line"));
  const cells: Named = {
    batch,
    line: (key) => lines.lookup(key, batch("line")),
    steel: (key) => `IF(${stock}="","",${steels.lookup(key, stock)})`,
  };
  const id = batches.at("batch", index);
  return [
    [heading("Heat-treat order"), worked(`=IF(${id}="","",${id})`)],
    ...section("General", generalFields(sources, cells), named),
    ...section("Material", materialFields(cells), named),
    ...section("Treatment", processFields(cells), named),
    ...section("Result", resultFields(cells), named),
    ...section("Report", reportFields, named),
    ...signatures,
  ];
}

/** The order to whoever hardens the blades, a page a batch. */
export function heatTreatOrderSheet(sources: Sources, count: number): SheetModel {
  const top: Row[] = [
    [note("One page a batch. Shaded points may be typed over; what reads 'to be agreed' is open.")],
  ];
  const rows = [...top];
  const breaksAfter: number[] = [];
  for (let index = 0; index < count; index += 1) {
    rows.push(...page(sources, index, rows.length));
    if (index < count - 1) breaksAfter.push(rows.length - 1);
  }
  return docSheet("Heat-treat order", rows, { rowHeights: {}, print: { breaksAfter } });
}
