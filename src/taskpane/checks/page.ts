import { sentenceOf } from "../../core/refusal";
import type { PageContext, RenderPage } from "../page";
import { ask, cellText } from "../parts/ask";
import { afterPause, element, fill } from "../parts/dom";
import { button, fieldRow, linesField, textField } from "../parts/fields";
import { insertControl } from "../parts/insert";
import { disclosure, facts, note, refusalNote } from "../parts/tables";
import { pastedRows } from "./pasted-table";
import { runList } from "./run-list";
import { type ReadTable, readTableHere } from "./run-reader";
import { type Calendar, runReport } from "./run-report";

const PASTE_HINT =
  "Copied from a sheet or a CSV file, headings in the first row; RUN_HEADINGS lists them below";

/** Invented: one line that is clear of faults, one with a word for a steel that nobody sells. */
const EXAMPLE = [
  "line\tuse\tsteel\tgood\tyield\tlength\twidth\tthickness\tgrind\ttarget HRC\tquench",
  "T1\tField camp bushcraft\t1084\t12\t0.92\t120\t34\t3.6\tflat\t58\tfast oil",
  "T2\tField camp bushcraft\tmystery bar\t6\t92\t120\t34\t3.6\tflat\t58\tfast oil",
].join("\n");

/** Run checks: a run's table read from the sheet or pasted, answered line by line as RUN_PLAN plans it. */
export const render: RenderPage = (root, context) => {
  const calendar = calendarForm();
  const pasted = linesField({ label: "Lines of the run", hint: PASTE_HINT }, 4);
  // Lines of a table stay lines.
  pasted.control.wrap = "off";
  const source = element("div", { role: "status" });
  const report = element("div", {});
  let rows: readonly (readonly unknown[])[] = [];
  const check = () => fill(report, ...(rows.length === 0 ? [] : reportOf(rows, calendar.values())));
  const take = (given: readonly (readonly unknown[])[], ...origin: HTMLElement[]) => {
    rows = given;
    fill(source, ...origin);
    check();
  };
  const readPasted = () => take(pastedRows(pasted.control.value));
  pasted.control.addEventListener("input", afterPause(readPasted, 300));
  calendar.changed(check);
  const showExample = button("Show an example", () => {
    pasted.control.value = EXAMPLE;
    readPasted();
  });
  root.append(
    ...(context.port.hasSheet ? [fromSheet(context, take, source)] : []),
    pasted.block,
    showExample,
    calendar.block,
    source,
    report,
    headingList(),
  );
  return undefined;
};

type Take = (rows: ReadTable["rows"], ...origin: HTMLElement[]) => void;

function fromSheet({ port }: PageContext, take: Take, status: HTMLElement): HTMLElement {
  const read = async () => {
    try {
      const { address, rows, isCut } = await readTableHere(port);
      const lines = `${rows.length - 1} row${rows.length === 2 ? "" : "s"} below the headings`;
      const end = isCut ? "; the table goes on, and the rest was not read" : ", down to the first blank row";
      const origin = note(`Read from ${address}: ${lines}${end}.`);
      take(rows, origin, insertControl(port, () => `=BLADE.RUN_PLAN(${address})`).block);
    } catch (problem) {
      take([]);
      fill(status, refusalNote(sentenceOf(problem)));
    }
  };
  return element(
    "div",
    {},
    button("Check the table around the selected cell", () => void read(), "main"),
    note("Nothing is written; press again after a change in the sheet. Or paste lines:"),
  );
}

function reportOf(rows: readonly (readonly unknown[])[], calendar: Calendar): HTMLElement[] {
  const report = runReport(rows, calendar);
  return typeof report === "string" ? [refusalNote(report)] : runList(report);
}

function calendarForm() {
  const weeks = textField({ label: "Weeks until due" });
  const bench = textField({ label: "Bench hours a week" });
  const oven = textField({ label: "Oven hours a week" });
  const fields = [weeks, bench, oven];
  return {
    block: disclosureOf("Will it be done in time?", fieldRow(...fields)),
    values: (): Calendar => ({
      weeks: weeks.control.value.trim(),
      benchHours: bench.control.value.trim(),
      ovenHours: oven.control.value.trim(),
    }),
    changed(task: () => void) {
      for (const { control } of fields) control.addEventListener("input", afterPause(task, 300));
    },
  };
}

function disclosureOf(summary: string, ...content: HTMLElement[]): HTMLElement {
  return disclosure(summary, () => content);
}

/** What the first row may hold, from the function that answers it on a sheet. */
function headingList(): HTMLElement {
  return disclosure("Headings that a run may have", () => [
    note("In any order in the first row; other columns are passed over."),
    facts(headingPairs(), true),
  ]);
}

function headingPairs(): [string, string][] {
  return ask("RUN_HEADINGS").rows.map((row) => {
    const [heading = "", unit = "", needed = "", meaning = ""] = row.map(cellText);
    return [[heading, unit, needed].filter((part) => part !== "").join(", "), meaning];
  });
}
