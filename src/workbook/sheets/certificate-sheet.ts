import type { SheetModel } from "../model/sheet-model";
import type { Cover } from "./cover-sheet";
import { CAUTION, docSheet, fieldRows, heatNumber, stated, taken } from "./parts/doc-rows";
import { FORMAT, heading, inFront, note, type Row, title, typed, words } from "./parts/sheet-parts";
import type { SteelKey, Steels } from "./steels-sheet";

const ASKED = 2;
/** The grade neither limits the element nor was it analysed. */
const NO_LIMIT = "not limited";
const NOT_GIVEN = "not given";
const NAMED = `$B$${ASKED + 1}`;

/** One certificate in full, as it is filed or sent back to the mill. */
export function certificateSheet(cover: Cover, steels: Steels, elements: readonly string[]): SheetModel {
  const first = steels.at("id", 0);
  const of = (key: SteelKey) => steels.lookup(key, NAMED);
  const figures = steels.block(`%${elements[0]}`, `%${elements.at(-1)}`);
  const symbols = `{${elements.map((element) => `"${element}"`).join(",")}}`;
  const analysis = `INDEX(${figures},MATCH(${NAMED},${steels.block("id")},0),0)`;
  const call = `BLADE.CERTIFICATE(${of("grade")},${symbols},${analysis})`;
  const wait = (formula: string) => `=IF(OR(${NAMED}="",COUNT(${analysis})=0),"",${formula})`;
  const verdict = `IF(COUNT(${analysis})=0,"no analysis yet",INDEX(${call},ROWS(${call}),5))`;
  const figure = (element: string, column: number) =>
    `INDEX(${call},MATCH("${element}",INDEX(${call},0,1),0),${column})`;
  const fields = [
    taken("Grade ordered", of("grade")),
    taken("Standard", of("standard")),
    heatNumber(of("heat")),
    taken("Certificate EN 10204", of("certificate")),
    taken("Supplier", of("supplier")),
    taken("Run", cover.at("run")),
    heatNumber(of("stamp"), "Heat no. on the bar"),
    stated("Checked by, date"),
  ];
  const rows: Row[] = [
    [title("Certificate check")],
    [
      note(
        "The mill's figures against the limits of the grade, rounded to the limit's last place. Type another steel to see its page.",
      ),
    ],
    [inFront("Steel"), typed(`=IF(${first}="","",${first})`)],
    ...fieldRows(fields, NAMED),
    [],
    [heading("Element"), heading("Low to high %"), heading("Found %"), heading("Status")],
    ...elements.map((element): Row => {
      const told = (formula: string, otherwise = NO_LIMIT) => words(wait(`IFNA(${formula},"${otherwise}")`));
      return [
        heading(element),
        told(limits(figure(element, 2), figure(element, 3))),
        {
          ...told(`IF(${figure(element, 4)}="","${NOT_GIVEN}",${figure(element, 4)})`, NOT_GIVEN),
          format: FORMAT.massPercent,
        },
        told(figure(element, 5)),
      ];
    }),
    [inFront("Verdict"), undefined, undefined, words(`=IF(${NAMED}="","",${verdict})`)],
    [],
    [
      note(
        "Heat number on certificate, bar and delivery note must be one. Limits of some grades are recalled: see Cautions and sources.",
      ),
    ],
    [note(CAUTION)],
  ];
  const start = ASKED + 1 + Math.ceil(fields.length / 2) + 2;
  return docSheet("Certificate check", rows, {
    statusColumns: [3],
    lines: [start, start + elements.length],
    wordLists: [],
  });
}

/** Limits as words: what is open on one side stays out. */
function limits(low: string, high: string): string {
  const least = `TEXT(${low},"0.00#")`;
  const most = `TEXT(${high},"0.00#")`;
  return `IF(${low}="",IF(${high}="","${NO_LIMIT}","up to "&${most}),IF(${high}="","from "&${least},${least}&" to "&${most}))`;
}
