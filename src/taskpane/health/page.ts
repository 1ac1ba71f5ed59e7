import manifest from "../../../package.json";
import { sentenceOf } from "../../core/refusal";
import { catalogue } from "../../functions/catalogue";
import type { RenderPage } from "../page";
import { ask, firstRow } from "../parts/ask";
import { element, fill } from "../parts/dom";
import { button } from "../parts/fields";
import { facts, refusalNote } from "../parts/tables";

const NAMES = [
  "Look through the workbook on the page Share and repair: it enters formulas again that were typed while the add-in was not there.",
  "Excel on Windows and Mac: Insert, My Add-ins: remove the add-in, add it again, and close and open Excel.",
  "Whoever hosts the pages opens check.html at their address: it says what is missing.",
];

const RECALCULATE =
  "After a new version cells keep the figures of the old one, and F9 passes over cells whose inputs stayed the same.";

/** The pane and the functions come as two files; a host or a browser that kept one of them mixes versions. */
function versionFault(functions: string): HTMLElement | null {
  if (functions.includes(manifest.version)) return null;
  return refusalNote(
    `The pane is version ${manifest.version}, the functions say "${functions}": close every workbook and open Excel again.`,
  );
}

/** Health: what is running, what to do about #NAME?, and working everything out anew. */
export const render: RenderPage = (root, { port, open }) => {
  const [functions = ""] = firstRow(ask("VERSION"));
  const found = element("div", {}, "Asking …");
  const status = element("p", { role: "status" });
  const press = button("Recalculate all", async () => {
    fill(status, "Working out …");
    try {
      await port.recalculate();
      fill(status, "Every formula is being recalculated.");
    } catch (problem) {
      fill(status, sentenceOf(problem));
    }
  });
  const own: [string, string][] = [
    ["Functions", `${functions}; ${catalogue.length} of them`],
    ["Pane", `version ${manifest.version}`],
  ];
  const show = (told: readonly (readonly [string, string])[]) => fill(found, facts([...own, ...told], true));
  port.health().then(show, (problem) => show([["Program around the pane", sentenceOf(problem)]]));
  const repair = button("Open Share and repair", () => open("repair"));
  root.append(
    element("h3", {}, "Recalculate everything"),
    element("p", {}, RECALCULATE),
    port.hasSheet
      ? element("div", {}, press, status)
      : element("p", {}, "There is no sheet beside this page."),
    element("h3", {}, "What is running"),
    ...[versionFault(functions)].filter((one) => one !== null),
    found,
    element("h3", {}, "If cells show #NAME?"),
    element("ol", {}, ...NAMES.map((sentence) => element("li", {}, sentence))),
    repair,
  );
  return undefined;
};
