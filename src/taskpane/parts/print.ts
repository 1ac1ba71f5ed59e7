import { ask, firstRow } from "./ask";
import { element } from "./dom";
import { button } from "./fields";
import { openAtOnce } from "./tables";

/**
 * A button that prints the page that is open, and nothing of the program around it. A host whose
 * window cannot print does nothing; the hint says where it can.
 */
export function printButton(text: string): HTMLElement {
  const press = button(text, () => {
    const { documentElement } = document;
    documentElement.dataset.print = "pane";
    addEventListener("afterprint", () => delete documentElement.dataset.print, { once: true });
    print();
  });
  const hint = element(
    "p",
    { class: "hint" },
    "Prints this page with its sources. Where Excel’s pane does not print, open the pane’s address in a browser.",
  );
  return element("div", { class: "print-control" }, press, hint);
}

/**
 * Opens what is closed on a page while it is printed, so that sources stand on the paper; the help of single
 * functions stays as it is.
 *
 * @returns A function that leaves the printing of the window alone again.
 */
export function openWhilePrinting(page: HTMLElement): () => void {
  let opened: readonly HTMLDetailsElement[] = [];
  const before = () => {
    opened = [...page.querySelectorAll<HTMLDetailsElement>("details:not([open], .function)")];
    opened.forEach(openAtOnce);
  };
  const after = () => {
    for (const details of opened) details.open = false;
    opened = [];
  };
  addEventListener("beforeprint", before);
  addEventListener("afterprint", after);
  return () => {
    removeEventListener("beforeprint", before);
    removeEventListener("afterprint", after);
  };
}

/** Stands on paper only: what worked the page out. */
export function printedLine(): HTMLElement {
  const [version = ""] = firstRow(ask("VERSION"));
  return element(
    "p",
    { class: "print-only" },
    `${version}. Estimates: harden and temper a coupon of your own bar first and read it.`,
  );
}
