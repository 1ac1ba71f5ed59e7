import {
  ArrayValueObject,
  type BaseReferenceObject,
  type FunctionVariantType,
} from "@univerjs/engine-formula";

/** The one value that was given; that of a list of one, and of the cell that a reference names. */
export function singleOf(given: FunctionVariantType | undefined): FunctionVariantType | undefined {
  if (given === undefined) return undefined;
  const value = given.isReferenceObject() ? (given as BaseReferenceObject).toArrayValueObject() : given;
  if (!(value instanceof ArrayValueObject)) return value;
  const isOne = value.getRowCount() === 1 && value.getColumnCount() === 1;
  return isOne ? singleOf(value.get(0, 0) ?? undefined) : undefined;
}
