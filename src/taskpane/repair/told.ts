import type { FileReport } from "../pane-files";
import { element } from "../parts/dom";

/** What was done, as a sentence with remarks below. */
export function told({ sentence, remarks }: FileReport): HTMLElement[] {
  const list = element("ul", {}, ...remarks.map((remark) => element("li", {}, remark)));
  return [element("p", {}, sentence), ...(remarks.length === 0 ? [] : [list])];
}
