import type { HostPort } from "./port";

/** The port of a page that stands alone in a browser: figures only. */
export const noSheet: HostPort = {
  name: "this browser",
  hasSheet: false,
  theme: () => undefined,
  selection: async () => null,
  onSelection: () => () => undefined,
  insertFormula: async () => {
    throw new Error("There is no sheet here: open the pane in Excel or in the workbench.");
  },
};
