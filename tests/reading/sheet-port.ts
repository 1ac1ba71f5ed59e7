import { noSheet } from "../../src/host/no-sheet";
import type { FormulaChange, FormulaPart, HostPort, HostRows, SelectedCell } from "../../src/host/port";

/** A port with a sheet of a few ranges; what is written is kept. */
export function sheetPort(ranges: Readonly<Record<string, HostRows>>, parts: readonly FormulaPart[] = []) {
  const written: FormulaChange[] = [];
  const port: HostPort = {
    ...noSheet,
    name: "the test",
    hasSheet: true,
    readValues: async (references) => references.map((reference) => ranges[reference] ?? null),
    formulas: async function* () {
      yield* parts;
    },
    replaceFormulas: async (changes, { signal }) => {
      if (!signal.aborted) written.push(...changes);
      return written.length;
    },
  };
  return { port, written };
}

/** A selected cell that shows a value. */
export function selected(formula: string, value = "", more: Partial<SelectedCell> = {}): SelectedCell {
  const error = value.startsWith("#") ? value : "";
  const held = { formula, shown: formula, value, figure: error === "" ? value : "", error };
  return { address: "Plan!D7", ...held, filledBy: null, sentence: "", ...more };
}
