import { sentenceOf } from "../../core/refusal";
import { NAMESPACE } from "../../functions/catalogue";
import type { PageContext, RenderPage } from "../page";
import { element, fill } from "../parts/dom";
import { button } from "../parts/fields";
import { insertControl } from "../parts/insert";
import { markStarted } from "../parts/started";
import { told } from "../repair/told";

const WHAT =
  "Plans a production run of blades: which steel and how to harden it, what hardness after which temper, what a blade weighs and where it balances, how many to start, what it costs.";

const HOW = [
  "Worksheet functions do the work: type =BLADE. in a cell. This pane explains them, fills them in, and shows the tables behind them.",
  "Every figure is an estimate with a stated range, error and source. Harden and temper a coupon of your own bar first and read it.",
  "Nothing that you type or open leaves this machine.",
];

/** Known to every reader of a hardness chart, and short enough to be read in the cell. */
const EXAMPLE = `=${NAMESPACE}.TEMPERED_RANGE("1095","400 °F")`;

function step(title: string, text: string, ...controls: readonly (HTMLElement | null)[]): HTMLElement {
  return element("section", { class: "step" }, element("h3", {}, title), element("p", {}, text), ...controls);
}

function demo({ files, port }: PageContext): HTMLElement {
  const title = "Look at a planned run";
  if (files === undefined) {
    const where = port.hasSheet
      ? "The workbench opens with it: six lines of an invented forge, sheets from the enquiry to what is sent."
      : "Opens from Excel’s pane, or in the workbench.";
    return step(title, where);
  }
  const status = element("div", { role: "status" });
  const press = button("Open the demo plan", async () => {
    press.disabled = true;
    fill(status, "Making the workbook …");
    try {
      fill(status, ...told(await files.demo()));
    } catch (problem) {
      fill(status, element("p", { class: "refusal" }, sentenceOf(problem)));
    }
    press.disabled = false;
  });
  return step(title, "Six lines of an invented forge, with a sheet for every step.", press, status);
}

/** Start: what this is, and three things to try. */
export const render: RenderPage = (root, context) => {
  const { port, open } = context;
  const explain = button("Explain this cell", () => open("cell"));
  root.append(
    element("p", {}, WHAT),
    step(
      "Try a function",
      "Low, likely and high HRC of 1095 after a 2 h temper at 400 °F.",
      insertControl(port, () => EXAMPLE, "Insert this example").block,
      button("Choose another function", () => open("insert")),
    ),
    demo(context),
    step(
      "Ask about a cell",
      "Select a cell with a BLADE formula: its inputs, its sources, the way out of an error.",
      explain,
    ),
    element("ul", {}, ...HOW.map((sentence) => element("li", {}, sentence))),
  );
  return markStarted;
};
