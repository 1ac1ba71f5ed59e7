import { CommandType, type IExecutionOptions } from "@univerjs/core";

interface Executed {
  readonly id: string;
  readonly type: CommandType;
  readonly options?: IExecutionOptions | undefined;
}

const MUTATION = "sheet.mutation.";

/** Changes after which a cell need not stand where the file has it. */
const REARRANGING = new Set(
  [
    "insert-row",
    "insert-col",
    "remove-rows",
    "remove-col",
    "move-rows",
    "move-columns",
    "insert-sheet",
    "remove-sheet",
    "set-worksheet-name",
    "set-worksheet-order",
    "add-table",
    "delete-table",
    "set-sheet-table",
  ].map((name) => MUTATION + name),
);

/** True for a change that a save would keep, as against a result or a row height that the grid worked out. */
export function isEdit({ id, type, options }: Executed): boolean {
  const workedOut = options?.fromFormula === true || id === `${MUTATION}set-worksheet-row-auto-height`;
  return type === CommandType.MUTATION && id.startsWith(MUTATION) && !workedOut;
}

/** True for a change of rows, columns, sheets or tables as wholes. */
export function isRearrangement({ id }: Executed): boolean {
  return REARRANGING.has(id);
}
