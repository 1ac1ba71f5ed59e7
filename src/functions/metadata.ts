import type { AnyParameter, WorksheetFunction } from "./declare";

/** One parameter as Excel's custom-function metadata describes it. */
interface ParameterMetadata {
  readonly name: string;
  readonly description: string;
  readonly type: "any" | "string";
  readonly dimensionality: "matrix" | "scalar";
  readonly optional?: true;
  /** The list of words that Excel offers while the argument is typed; builds that do not know it ignore it. */
  readonly customEnumId?: string;
}

/** Words that Excel offers, in the form of its metadata. */
interface EnumMetadata {
  readonly id: string;
  readonly type: "string";
  readonly values: readonly { readonly name: string; readonly stringValue: string }[];
}

interface FunctionMetadata {
  readonly id: string;
  readonly name: string;
  readonly description: string;
  readonly parameters: readonly ParameterMetadata[];
  readonly result: { readonly dimensionality: "matrix" };
  readonly options?: { readonly cancelable: true };
}

export interface Metadata {
  readonly allowCustomDataForDataTypeAny: true;
  readonly allowErrorForDataTypeAny: true;
  readonly enums: readonly EnumMetadata[];
  readonly functions: readonly FunctionMetadata[];
}

/** The lists of words of all functions, each once under the name of its kind. */
class WordLists {
  readonly enums: EnumMetadata[] = [];

  /** Id of the list of a parameter; nothing where its words cannot be counted. */
  idOf({ kind, words }: AnyParameter): string | undefined {
    if (words.length === 0) return undefined;
    const values = words.map((word) => ({ name: word, stringValue: word }));
    const told = JSON.stringify(values);
    const known = this.enums.find((list) => JSON.stringify(list.values) === told);
    if (known !== undefined) return known.id;
    const base = kind.toUpperCase().replace(/[^A-Z]+/g, "_");
    const alike = this.enums.filter(({ id }) => id === base || id.startsWith(`${base}_`)).length;
    const id = alike === 0 ? base : `${base}_${alike + 1}`;
    this.enums.push({ id, type: "string", values });
    return id;
  }
}

/**
 * An argument is a matrix of anything: a cell or a range may stand in each, and one bad cell must not spoil the call.
 * Only a word of a function that answers once for all its arguments is a single text.
 */
function parameterMetadata(
  parameter: AnyParameter,
  fn: WorksheetFunction,
  lists: WordLists,
): ParameterMetadata {
  const list = lists.idOf(parameter);
  const isSingle = list !== undefined && fn.shape === "table" && parameter.takes === "cell";
  return {
    name: parameter.label,
    description: parameterHelp(parameter),
    type: isSingle ? "string" : "any",
    dimensionality: isSingle ? "scalar" : "matrix",
    ...(parameter.optional ? { optional: true } : {}),
    ...(list === undefined ? {} : { customEnumId: list }),
  };
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

function functionMetadata(fn: WorksheetFunction, lists: WordLists): FunctionMetadata {
  return {
    id: fn.name,
    name: fn.name,
    description: fn.summary,
    parameters: Object.values(fn.parameters).map((parameter) => parameterMetadata(parameter, fn, lists)),
    result: { dimensionality: "matrix" },
    ...(fn.takesLong ? { options: { cancelable: true } } : {}),
  };
}

/** The content of functions.json. */
export function metadataOf(functions: readonly WorksheetFunction[]): Metadata {
  const lists = new WordLists();
  const described = functions.map((fn) => functionMetadata(fn, lists));
  return {
    allowCustomDataForDataTypeAny: true,
    // Without it a single #N/A in a column keeps the whole call from being made.
    allowErrorForDataTypeAny: true,
    enums: lists.enums,
    functions: described,
  };
}

/** A call as the argument hint shows it: `TEMPERED_HRC(steel, temper C, [hours 2])`. */
export function signature(fn: WorksheetFunction): string {
  const parts = Object.values(fn.parameters).map(({ label, optional, fallbackText }) => {
    if (!optional) return label;
    return fallbackText === "" ? `[${label}]` : `[${label} ${fallbackText}]`;
  });
  return `${fn.name}(${parts.join(", ")})`;
}
