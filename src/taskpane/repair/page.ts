import type { RenderPage } from "../page";
import { printSection } from "./print-section";
import { repairSection } from "./repair-section";
import { shareSection } from "./share-section";

/** Share and repair: a workbook that goes out, and one that came back broken. */
export const render: RenderPage = (root, context) => {
  root.append(repairSection(context.port), shareSection(context), printSection(context.port));
  // A button of the ribbon leads to its own section.
  const wanted =
    context.state.part === "" ? null : root.querySelector(`[data-part="${CSS.escape(context.state.part)}"]`);
  if (wanted !== null) setTimeout(() => wanted.scrollIntoView());
  return undefined;
};
