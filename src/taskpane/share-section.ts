import { element } from "./dom";
import type { PageContext } from "./page";

const STEPS = [
  "Without the add-in the last figures stay visible only until something is worked out anew; LibreOffice shows #NAME? in every cell that a formula fills.",
  "Send a share copy instead: values only, each former formula in a note, and a sheet that says where the figures come from.",
  "On the command line: npm run share -- FILE.xlsx makes one beside the file.",
];

/** Share: why a workbook should leave as a copy with values only, and how to make one. */
export function shareSection(_context: PageContext): HTMLElement {
  return element(
    "section",
    { "aria-label": "Share" },
    element("h3", {}, "Before the workbook goes to somebody without the add-in"),
    ...STEPS.map((sentence) => element("p", {}, sentence)),
  );
}
