import { sentenceOf } from "../../core/refusal";
import type { HostPort } from "../../host/port";
import { element, fill } from "../parts/dom";
import { button, choiceField } from "../parts/fields";
import { refusalNote } from "../parts/tables";

/** Sheets of the planning workbook that are papers: they come first where one chooses what to print. */
const PAPERS = ["Quote", "Steel enquiry", "Steel order", "Heat-treat order", "Traveller"];

const papersFirst = (names: readonly string[]) => [
  ...PAPERS.filter((name) => names.includes(name)),
  ...names.filter((name) => !PAPERS.includes(name)),
];

/** Print a paper: no host lets the pane print a sheet, so its sheet is shown and said how it is printed. */
export function printSection(port: HostPort): HTMLElement {
  const choice = choiceField({ label: "Sheet" }, []);
  const status = element("div", { role: "status" });
  const show = async () => {
    const name = choice.control.value;
    try {
      await port.showSheet(name);
      fill(status, `${name} is shown. ${port.printHint}`);
    } catch (problem) {
      fill(status, refusalNote(sentenceOf(problem)));
    }
  };
  const block = element(
    "section",
    { "aria-label": "Print", "data-part": "print" },
    element("h3", {}, "Print a paper"),
    element(
      "p",
      {},
      "Each paper is set up to print a page for each subject; the pane cannot print by itself.",
    ),
    choice.block,
    button("Show it for printing", () => void show()),
    status,
  );
  block.hidden = true;
  void port.sheetNames().then(
    (names) => {
      choice.control.append(...papersFirst(names).map((name) => new Option(name, name)));
      block.hidden = names.length === 0;
    },
    () => undefined,
  );
  return block;
}
