/** Sheets by which a planning workbook is known. */
const OF_A_PLAN = ["Cover", "Lines", "Recipe", "Cut list", "Costs", "Heat batches"] as const;

/** Whether a workbook of these sheets is laid out as a planning workbook. */
export const isPlanning = (sheets: readonly string[]): boolean =>
  OF_A_PLAN.every((name) => sheets.includes(name));
