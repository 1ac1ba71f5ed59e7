import { formulas, replaceFormulas } from "./excel-formulas";
import { health, recalculate } from "./excel-health";
import { activeCell, readValues, separators } from "./excel-read";
import { sheetNames, showSheet } from "./excel-sheets";
import { addSheet, insertFormula, placeFor, writeBlock } from "./excel-write";
import type { HostPort, Theme, Unsubscribe } from "./port";

/** How the page found the program around it. */
export type Connection =
  | { readonly kind: "excel"; readonly port: HostPort }
  /** office.js answered, but no Excel is around the page: it was opened in a browser. */
  | { readonly kind: "outside" }
  /** office.js did not load: no network, or a network that keeps its address out. */
  | { readonly kind: "missing" };

/** Waits until office.js knows where it is. Does not settle while its own files are still loading. */
export async function connect(): Promise<Connection> {
  if (typeof Office === "undefined") return { kind: "missing" };
  const { host } = await Office.onReady();
  return host === Office.HostType.Excel ? { kind: "excel", port: excelPort } : { kind: "outside" };
}

function onSelection(changed: () => void): Unsubscribe {
  const { document } = Office.context;
  const event = Office.EventType.DocumentSelectionChanged;
  document.addHandlerAsync(event, changed);
  return () => document.removeHandlerAsync(event, { handler: changed });
}

/** Brightness of a `#rrggbb` colour from 0 to 1, by the weights of ITU-R BT.601. */
function brightness(colour: string): number {
  const channel = (from: number) => Number.parseInt(colour.slice(from, from + 2), 16) / 255;
  return 0.299 * channel(1) + 0.587 * channel(3) + 0.114 * channel(5);
}

/** Excel tells its colours on Windows and Mac; on the web it may tell none. */
function theme(): Theme | undefined {
  const background = Office.context.officeTheme?.bodyBackgroundColor;
  if (background === undefined || !/^#[0-9a-f]{6}$/i.test(background)) return undefined;
  return brightness(background) < 0.5 ? "dark" : "light";
}

/** What the pane may ask of Excel. */
export const excelPort: HostPort = {
  name: "Excel",
  hasSheet: true,
  hasCharts: true,
  printHint: "Excel lets no add-in print: press Ctrl+P, on a Mac ⌘P; in a browser choose File, Print.",
  sheetNames,
  showSheet,
  theme,
  selection: activeCell,
  onSelection,
  readValues,
  insertFormula,
  placeFor,
  writeBlock,
  addSheet,
  separators,
  recalculate,
  health,
  formulas,
  replaceFormulas,
};
