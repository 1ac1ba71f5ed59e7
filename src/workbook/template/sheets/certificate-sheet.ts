import type { SheetModel } from "../../sheet-model";
import { FORMAT, heading, note, type Row, title, typed, words, worked } from "../../sheet-parts";
import { CAUTION, docSheet, fieldRows, stated, taken } from "../doc-rows";
import type { Cover } from "./cover-sheet";
import type { SteelKey, Steels } from "./steels-sheet";

const ASKED = 2;
const NAMED = `$B$${ASKED + 1}`;

/** One certificate in full, as it is filed or sent back to the mill. */
export function certificateSheet(
  cover: Cover,
  steels: Steels,
  elements: readonly string[],
  first: string,
): SheetModel {
  const of = (key: SteelKey) => steels.lookup(key, NAMED);
  const [from, to] = [elements[0], elements.at(-1)].map((element) => steels.block(`%${element}`));
  const [left, right] = [from?.split(":")[0], to?.split(":")[1]?.replace(/^.*!/, "")];
  const symbols = `{${elements.map((element) => `"${element}"`).join(",")}}`;
  const analysis = `INDEX(${left}:${right},MATCH(${NAMED},${steels.block("id")},0),0)`;
  const call = `BLADE.CERTIFICATE(${of("grade")},${symbols},${analysis})`;
  const figure = (index: number, column: number) =>
    `=IF(OR(${NAMED}="",COUNT(${analysis})=0),"",IF(${index + 1}>ROWS(${call}),"",INDEX(${call},${index + 1},${column})))`;
  const fields = [
    taken("Grade ordered", of("grade")),
    taken("Standard", of("standard")),
    taken("Heat no.", of("heat")),
    taken("Certificate EN 10204", of("certificate")),
    taken("Supplier", of("supplier")),
    taken("Run", cover.at("run")),
    stated("Heat no. on the bar"),
    stated("Checked by, date"),
  ];
  const rows: Row[] = [
    [title("Certificate check")],
    [
      note(
        "The mill's figures against the limits of the grade, rounded to the limit's last place. Type another steel to see its page.",
      ),
    ],
    [heading("Steel"), typed(first)],
    ...fieldRows(fields, NAMED),
    [],
    [heading("Element"), heading("Low to high %"), heading("Found %"), heading("Status")],
    ...Array.from(
      { length: elements.length + 3 },
      (_, index): Row => [
        words(figure(index, 1)),
        words(limits(figure, index)),
        worked(figure(index, 4), FORMAT.massPercent),
        words(figure(index, 5)),
      ],
    ),
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
    lines: [start, start + elements.length + 2],
    wordLists: [],
  });
}

/** Limits as words: what is open on one side stays out. */
function limits(figure: (index: number, column: number) => string, index: number): string {
  const [low, high] = [2, 3].map((column) => figure(index, column).slice(1));
  return `=IF(AND(${low}="",${high}=""),"",IF(${low}="","up to "&TEXT(${high},"0.00#"),TEXT(${low},"0.00#")&IF(${high}="",""," to "&TEXT(${high},"0.00#"))))`;
}
