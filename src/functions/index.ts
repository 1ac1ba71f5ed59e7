/** The worksheet functions for programs: what is declared, and how one is asked. */
export { catalogue, functionNamed, type ListedFunction, NAMESPACE } from "./catalogue";
export type { Cell, Cells } from "./cells";
export type {
  Answer,
  AnyParameter,
  Column,
  FaultsOf,
  Parameters,
  RowFunction,
  ScalarFunction,
  TableFunction,
  TableRows,
  Values,
  WorksheetFunction,
} from "./declare";
export { evaluate } from "./evaluate";
export type { ListParameter, Parameter, TableParameter } from "./parameters";
export { type AnswerRecord, evaluateRecords } from "./records";
export type { Topic } from "./topics";
