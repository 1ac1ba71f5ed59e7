import { ENGLISH, type HostPort } from "./port";

async function refuse(): Promise<never> {
  throw new Error("There is no sheet here: open the pane in Excel or in the workbench.");
}

/** The port of a page that stands alone in a browser: figures only. */
export const noSheet: HostPort = {
  name: "this browser",
  hasSheet: false,
  hasCharts: false,
  printHint: "",
  sheetNames: async () => [],
  showSheet: refuse,
  theme: () => undefined,
  selection: async () => null,
  onSelection: () => () => undefined,
  readValues: async (references) => references.map(() => null),
  insertFormula: refuse,
  placeFor: async () => null,
  writeBlock: refuse,
  addSheet: refuse,
  separators: async () => ENGLISH,
  recalculate: refuse,
  health: async () => [["Sheet", "none beside this page"]],
  // biome-ignore lint/correctness/useYield: a browser without a sheet has no formulas
  formulas: async function* () {
    return;
  },
  replaceFormulas: async () => 0,
};
