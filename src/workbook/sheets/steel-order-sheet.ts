import { ANSWER_BY, USUAL_TIME } from "../answers/forms";
import type { SheetModel } from "../model/sheet-model";
import type { Cover } from "./cover-sheet";
import { type CutList, LINES_A_PAGE } from "./cut-list-sheet";
import {
  type DocField,
  lengthWords,
  openFieldRows,
  paperSheet,
  section,
  signatures,
  stated,
  taken,
  told,
} from "./parts/doc-rows";
import type { Row } from "./parts/sheet-parts";
import { DATE_FORMAT } from "./parts/table-sheet";
import type { Steels } from "./steels-sheet";

interface Sources {
  readonly cover: Cover;
  readonly cuts: CutList;
  readonly steels: Steels;
}

/** An order, or the enquiry before it: what the supplier is to do, and what is still asked of him. */
interface Letter {
  readonly name: string;
  readonly general: (cover: Cover, supplier: string) => DocField[];
  readonly signs: readonly Row[];
}

const TERMS: readonly DocField[] = [
  stated("Packing", "dry, oiled, ends marked"),
  stated("Certificate", "EN 10204 3.1, sent with the goods"),
  stated("Heat number", "on every piece or bundle, as on the certificate; one heat a line"),
  stated("Substitution", "none without written consent"),
];

const head = (cover: Cover, supplier: string): DocField[] => [
  taken("Run, revision", `${cover.at("run")}&" "&${cover.at("revision")}`),
  taken("To", supplier),
  taken("Date", cover.at("asOf"), DATE_FORMAT),
];

const ORDER: Letter = {
  name: "Steel order",
  general: (cover, supplier) => [
    taken("Order no.", cover.at("orderNumber")),
    ...head(cover, supplier),
    taken("Delivery by", cover.at("steelBy"), DATE_FORMAT),
    stated("Delivery terms"),
    stated("Price", "as offered; surcharges to be stated with their date"),
    ...TERMS,
  ],
  signs: signatures(),
};

const ENQUIRY: Letter = {
  name: "Steel enquiry",
  general: (cover, supplier) => [
    ...head(cover, supplier),
    stated(ANSWER_BY, `please ${USUAL_TIME}`),
    told(
      "Please state",
      `"price a kg with surcharges, minimum charge, freight, week of delivery, bar lengths: in the table of the copy"`,
    ),
    stated("Equal grades", "may be offered, named as such, with their analysis"),
    ...TERMS,
  ],
  signs: signatures("For the forge, date", "For the supplier, date"),
};

/** How the cut list numbers the places of lines on pages. */
const slotOf = (page: number, slot: number) => (page + 1) * 10 + slot + 1;

/** What the trade asks of ground and of rolled stock differs; common practice, no source. */
const byForm = (form: string, ground: string, strip: string, rolled: string) =>
  `IF(ISNUMBER(SEARCH("ground",${form})),"${ground}",IF(OR(ISNUMBER(SEARCH("strip",${form})),ISNUMBER(SEARCH("cold",${form})),ISNUMBER(SEARCH("sheet",${form}))),"${strip}","${rolled}"))`;

function lineFields({ cuts, steels }: Sources, row: string): DocField[] {
  const cut = (key: Parameters<CutList["block"]>[0]) => `INDEX(${cuts.block(key)},${row})`;
  const stock = (key: Parameters<Steels["lookup"]>[0]) =>
    `IF(${cut("steel")}="","",${steels.lookup(key, cut("steel"))})`;
  const form = stock("form");
  const opened = (label: string, formula: string): DocField => taken(label, formula);
  return [
    told("Grade, standard", `${cut("grade")}&IFERROR(", "&INDEX(BLADE.STEEL(${cut("grade")}),1,3),"")`),
    opened("Form", form),
    told("Thickness × width", `${lengthWords(cut("thickness"))}&" × "&${lengthWords(cut("width"))}`),
    told("Bars", `${cut("bars")}&" of "&${lengthWords(cut("bar"))}&", "&TEXT(${cut("buy")},"0.0")&" kg"`),
    opened("Condition", stock("condition")),
    told(
      "Tolerance",
      byForm(
        form,
        "thickness ± 0.05 mm, width ± 0.5 mm",
        "thickness ± 0.1 mm, width ± 0.5 mm",
        "thickness +0.2 -0 mm, width ± 0.5 mm, length +20 -0 mm",
      ),
    ),
    told(
      "Surface",
      byForm(
        form,
        "ground all over, no decarburised skin",
        "bright, no visible decarburised skin",
        "descaled; decarburised skin 0.3 mm a side at most",
      ),
    ),
    told(
      "Grain, straightness",
      byForm(
        form,
        "2 mm a metre",
        "2 mm a metre, slit edges without cracks",
        "grain 5 or finer (ASTM E112), 2 mm a metre",
      ),
    ),
  ];
}

function body(sources: Sources, letter: Letter, page: number, named: string): Row[] {
  const { cover, cuts } = sources;
  const at = (slot: number) => `MATCH(${slotOf(page, slot)},${cuts.block("slot")},0)`;
  const supplier = `INDEX(${cuts.block("supplier")},${at(0)})`;
  const slots = Array.from({ length: LINES_A_PAGE }, (_, slot): Row[] => {
    const line = `INDEX(${cuts.block("line")},${at(slot)})`;
    const itemNamed = `IF(${named}="","",IFERROR(${line},""))`;
    return [
      [{ content: `=IF(${itemNamed}="","","Item "&${itemNamed})`, role: "openLabel" }],
      ...openFieldRows(lineFields(sources, at(slot)), itemNamed),
    ];
  }).flat();
  return [...section("Terms", letter.general(cover, supplier), named), ...slots, ...letter.signs];
}

function letterSheet(letter: Letter, sources: Sources, count: number): SheetModel {
  const { cuts, cover } = sources;
  return paperSheet({
    name: letter.name,
    cover,
    paper: letter.name,
    label: "Supplier",
    count,
    subject: (page) =>
      `IFERROR(INDEX(${cuts.block("supplier")},MATCH(${slotOf(page, 0)},${cuts.block("slot")},0)),"")`,
    body: (page, named) => body(sources, letter, page, named),
    number: (page, named) => {
      const bought = `${cuts.block("supplier")},${named}`;
      const pages = (lines: string) => `ROUNDUP(${lines}/${LINES_A_PAGE},0)`;
      const upTo = `COUNTIFS(${bought},${cuts.block("page")},"<=${page + 1}")`;
      return [pages(upTo), pages(`COUNTIF(${bought})`)];
    },
    filled: `MAX(${cuts.block("page")})`,
  });
}

/** The order to each steel supplier: what is to be bought after what is in the rack. */
export const steelOrderSheet = (sources: Sources, count: number): SheetModel =>
  letterSheet(ORDER, sources, count);

/** The enquiry to each steel supplier, sent before the order: it asks for price and delivery and tells neither. */
export const steelEnquirySheet = (sources: Sources, count: number): SheetModel =>
  letterSheet(ENQUIRY, sources, count);
