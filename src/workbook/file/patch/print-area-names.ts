import type { DefinedName } from "../read/workbook-part";

export const PRINT_AREA = "_xlnm.Print_Area";
/** Keeps the formula of a print area whose rows were written out, so that they can be worked out again. */
export const WORKED_AREA = "Printed_rows";

/** The names of print areas that a formula works out. */
export const isWorkedArea = ({ name, formula }: Pick<DefinedName, "name" | "formula">): boolean =>
  (name === PRINT_AREA || name === WORKED_AREA) && formula.includes("(");
