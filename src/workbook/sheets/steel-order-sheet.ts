import type { SheetModel } from "../model/sheet-model";
import type { Cover } from "./cover-sheet";
import type { CutList } from "./cut-list-sheet";
import { type DocField, docSheet, section, signatures, stated, TO_AGREE, taken } from "./parts/doc-rows";
import { heading, note, type Row, title, worked } from "./parts/sheet-parts";
import { DATE_FORMAT } from "./parts/table-sheet";
import type { Steels } from "./steels-sheet";

const FIRST = 15;
/** Title of the line, its points, an empty row. */
const POINTS = 9;
const BLOCK = POINTS + 2;

interface Sources {
  readonly cover: Cover;
  readonly cuts: CutList;
  readonly steels: Steels;
}

function generalFields(cover: Cover): DocField[] {
  return [
    taken("Order no.", cover.at("orderNumber")),
    taken("Run", cover.at("run")),
    taken("Revision", cover.at("revision")),
    taken("Buyer", cover.at("forge")),
    taken("Supplier", cover.at("supplier")),
    taken("Date", cover.at("asOf"), DATE_FORMAT),
    stated("Delivery by"),
    stated("Packing", "dry, oiled, ends marked"),
    stated("Delivery terms"),
    stated("Price basis", "per kg, whole bars; surcharges to be stated with their date"),
    stated("Certificate", "EN 10204 3.1, sent with the goods"),
    stated("Heat number", "on every piece or bundle, as on the certificate"),
    stated("Mixed heats", "no: one heat a line"),
    stated("Substitution", "none without written consent"),
  ];
}

function lineFields({ cuts, steels }: Sources, index: number): DocField[] {
  const cut = (key: Parameters<CutList["at"]>[0]) => cuts.at(key, index);
  const stock = (key: Parameters<Steels["lookup"]>[0]) =>
    `IF(${cut("steel")}="","",${steels.lookup(key, cut("steel"))})`;
  const opened = (label: string, formula: string): DocField => ({
    label,
    formula: `IF(${formula}="","${TO_AGREE}",${formula})`,
  });
  return [
    taken("Grade", cut("grade")),
    opened("Standard, edition", `INDEX(BLADE.STEEL(${cut("grade")}),1,3)`),
    opened("Form", stock("form")),
    {
      label: "Thickness × width",
      formula: `TEXT(${cut("thickness")},"0.0#")&" × "&TEXT(${cut("width")},"0.0#")&" mm; thickness is critical"`,
    },
    { label: "Length", formula: `TEXT(${cut("bar")},"0")&" mm"` },
    stated("Tolerance", "thickness +0.2 -0 mm, width ± 0.5 mm, length +20 -0 mm"),
    opened("Condition", stock("condition")),
    stated("Hardness as delivered", "235 HB at most"),
    taken("Pieces", `IF(${cut("bars")}=0,"none to buy, in the rack",${cut("bars")})`, "0"),
    taken("Mass kg", cut("buy"), "0.0"),
    stated("Decarburised skin", "0.3 mm a side at most"),
    stated("Grain size", "5 or finer (ASTM E112)"),
    stated("Surface and edge", "descaled, edges sawn or slit, no shear cracks"),
    stated("Straightness", "2 mm a metre"),
    taken("Price a kg", cut("price"), "#,##0.00"),
    opened("Heat no. of last delivery", stock("heat")),
    taken("For the line", cut("line")),
    stated("Remarks"),
  ];
}

/** The order to the steel supplier, every point filled or open by name. */
export function steelOrderSheet(sources: Sources, count: number): SheetModel {
  const { cover, cuts } = sources;
  const lines = Array.from({ length: count }, (_, index): Row[] => {
    const named = `$B$${FIRST + index * BLOCK + 1}`;
    const line = cuts.at("line", index);
    const [, ...points] = section("", lineFields(sources, index), named);
    return [[heading("Order line"), worked(`=IF(${line}="","",${line})`)], ...points, []];
  }).flat();
  const rows: Row[] = [
    [title("Steel order")],
    [
      note(
        "Shaded points may be typed over. What reads 'to be agreed' is open: ask before it is taken for granted.",
      ),
    ],
    ...section("Terms", generalFields(cover)),
    [],
    [title("Steel, a block a line")],
    [note("Bars are counted for each line by itself, after what is in the rack.")],
    [],
    [],
    ...lines,
    ...signatures,
  ];
  const at = rows.findIndex(([cell]) => cell?.content === "Order line");
  if (at !== FIRST) throw new RangeError(`the first order line stands in row ${at + 1}, not ${FIRST + 1}`);
  const perPage = 3;
  const breaksAfter = Array.from(
    { length: Math.floor((count - 1) / perPage) },
    (_, page) => FIRST + ((page + 1) * perPage - 1) * BLOCK + BLOCK - 1,
  );
  return docSheet("Steel order", rows, { print: { breaksAfter } });
}
