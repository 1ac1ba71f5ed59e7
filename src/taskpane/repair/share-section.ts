import type { PageContext } from "../page";
import type { PaneFiles } from "../pane-files";
import { element } from "../parts/dom";
import { linesField, textField } from "../parts/fields";
import { freshId } from "../parts/fresh-id";
import { answerSources, answersList } from "./answers-list";
import { longWork } from "./long-work";
import { askForWhom } from "./share-question";
import { told } from "./told";

const WHY =
  "Without the add-in the last figures stay visible only until something is recalculated; LibreOffice shows #NAME? in every cell that a formula fills. A share copy holds values only, each former formula in a note, and a sheet that says where the figures come from.";

const ELSEWHERE =
  "In the workbench the buttons Share copy and New run stand above the sheet. On the command line: npm run share -- --for supplier FILE.xlsx makes a copy beside the file.";

/** Day on this machine's calendar, in the order of ISO 8601. */
function today(): string {
  const now = new Date();
  const digits = (value: number) => String(value).padStart(2, "0");
  return `${now.getFullYear()}-${digits(now.getMonth() + 1)}-${digits(now.getDate())}`;
}

function sharing(files: PaneFiles): HTMLElement[] {
  const date = textField({ label: "Date on the copy", hint: "as you want it to stand there" }, today());
  const share = longWork("Make a share copy", async () => {
    const question = await files.share();
    return [askForWhom(question, () => date.control.value.trim())];
  });
  return [date.block, share.block];
}

function answering(files: PaneFiles): HTMLElement[] {
  const chosen = element("input", { type: "file", multiple: "", id: freshId("answers") });
  const label = element("label", { for: chosen.id }, "Files that came back (.xlsx, .csv, .txt)");
  const pasted = linesField({ label: "Or paste the table of a mail", hint: "with its headings and keys" }, 3);
  const read = longWork("Read the answers", async () => {
    const found = await files.answers(await answerSources(chosen.files ?? [], pasted.control.value));
    return [answersList(found, async (numbers) => told(await found.take(numbers, today())))];
  });
  return [
    element("h3", {}, "Bring answers in"),
    element("div", { class: "field" }, label, chosen),
    pasted.block,
    read.block,
  ];
}

function planning(files: PaneFiles): HTMLElement[] {
  const plan = longWork("Open a planning workbook", async () => told(await files.plan()));
  return [
    element("h3", { "data-part": "plan" }, "A new run"),
    element(
      "p",
      {},
      "A workbook with a sheet for every step, from the enquiry to the shipped lot, its lines empty.",
    ),
    plan.block,
  ];
}

/** Share: why a workbook should leave as a copy with values only, and how to make one; a planning workbook to begin with. */
export function shareSection({ files }: PageContext): HTMLElement {
  return element(
    "section",
    { "aria-label": "Share", "data-part": "share" },
    element("h3", {}, "Before the workbook goes to somebody without the add-in"),
    element("p", {}, WHY),
    ...(files === undefined
      ? [element("p", {}, ELSEWHERE)]
      : [...sharing(files), ...answering(files), ...planning(files)]),
  );
}
