/** The worksheet functions for programs: what is declared, and how one is asked. */
export { catalogue, functionNamed, type ListedFunction, NAMESPACE } from "./catalogue";
export type { Cell, Cells } from "./cells";
export type { WorksheetFunction } from "./declare";
export { evaluate } from "./evaluate";
