import type { AnyParameter, WorksheetFunction } from "./declare";

/** One parameter as Excel's custom-function metadata describes it. */
interface ParameterMetadata {
  readonly name: string;
  readonly description: string;
  readonly type: "any";
  readonly dimensionality: "matrix";
  readonly optional?: true;
}

interface FunctionMetadata {
  readonly id: string;
  readonly name: string;
  readonly description: string;
  readonly parameters: readonly ParameterMetadata[];
  readonly result: { readonly dimensionality: "matrix" };
}

export interface Metadata {
  readonly allowCustomDataForDataTypeAny: true;
  readonly functions: readonly FunctionMetadata[];
}

/** Every argument is a matrix of anything: a cell or a range may stand in each, and one bad cell must not spoil the call. */
function parameterMetadata(parameter: AnyParameter): ParameterMetadata {
  const base = {
    name: parameter.label,
    description: parameterHelp(parameter),
    type: "any",
    dimensionality: "matrix",
  } as const;
  return parameter.optional ? { ...base, optional: true } : base;
}

/** Help of one argument with what is accepted and the default. */
export function parameterHelp({ help, fallbackText, optional }: AnyParameter): string {
  if (!optional) return help;
  return fallbackText === "" ? `${help} May be left out.` : `${help} ${fallbackText} where left out.`;
}

/** What a function gives, as one phrase. */
export function resultText(fn: WorksheetFunction): string {
  const columns = fn.shape === "scalar" ? [fn.result] : fn.result;
  return columns
    .map(({ label, unit }) => (unit === "text" || unit === "" ? label : `${label} [${unit}]`))
    .join(", ");
}

function functionMetadata(fn: WorksheetFunction): FunctionMetadata {
  return {
    id: fn.name,
    name: fn.name,
    description: fn.summary,
    parameters: Object.values(fn.parameters).map(parameterMetadata),
    result: { dimensionality: "matrix" },
  };
}

/** The content of functions.json. */
export function metadataOf(functions: readonly WorksheetFunction[]): Metadata {
  return { allowCustomDataForDataTypeAny: true, functions: functions.map(functionMetadata) };
}

/** A call as the argument hint shows it: `TEMPERED_HRC(steel, temper C, [hours 2])`. */
export function signature(fn: WorksheetFunction): string {
  const parts = Object.values(fn.parameters).map(({ label, optional, fallbackText }) => {
    if (!optional) return label;
    return fallbackText === "" ? `[${label}]` : `[${label} ${fallbackText}]`;
  });
  return `${fn.name}(${parts.join(", ")})`;
}
