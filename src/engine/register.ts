import { BooleanNumber, type Ctor } from "@univerjs/core";
import {
  BaseFunction,
  type BaseValueObject,
  ErrorType,
  ErrorValueObject,
  FunctionType,
  type IFunctionInfo,
  type IFunctionNames,
} from "@univerjs/engine-formula";
import { asRefusal } from "../functions/arguments";
import { catalogue, NAMESPACE } from "../functions/catalogue";
import type { AnyParameter, WorksheetFunction } from "../functions/declare";
import { evaluate } from "../functions/evaluate";
import { parameterHelp, resultText } from "../functions/metadata";
import { refusedValue } from "./refused-value";
import { RememberedCalls } from "./remembered-calls";
import { argumentFrom, resultFrom } from "./values";

/** The name as typed in a formula: `BLADE.CARBON`. */
function formulaName(fn: WorksheetFunction): string {
  return `${NAMESPACE}.${fn.name}`;
}

/** A name that the formula itself holds and nobody knows: a grade without quotes, a function mistyped. */
function isUnknownName(variant: BaseValueObject): boolean {
  return variant instanceof ErrorValueObject && variant.getErrorType() === ErrorType.NAME;
}

/** Nothing may escape: one thrown exception blanks every formula of a sheet. */
function answer(
  fn: WorksheetFunction,
  variants: readonly BaseValueObject[],
  remembered: RememberedCalls,
): BaseValueObject {
  const unknown = variants.find(isUnknownName);
  if (unknown !== undefined) return unknown;
  try {
    const given = variants.map(argumentFrom);
    return resultFrom(remembered.answer(given, () => evaluate(fn, given)));
  } catch (thrown) {
    return refusedValue(asRefusal(thrown));
  }
}

function executor(fn: WorksheetFunction): Ctor<BaseFunction> {
  const remembered = new RememberedCalls();
  return class extends BaseFunction {
    /** Texts arrive as typed: "3/16" is not turned into a date nor "5%" into a number on the way. */
    override isArgumentsIgnoreNumberPattern(): boolean {
      return true;
    }

    override calculate(...variants: BaseValueObject[]): BaseValueObject {
      return answer(fn, variants, remembered);
    }
  };
}

function parameterInfo(parameter: AnyParameter): IFunctionInfo["functionParameter"][number] {
  return {
    name: parameter.label,
    detail: parameterHelp(parameter),
    example: "",
    require: parameter.optional ? BooleanNumber.FALSE : BooleanNumber.TRUE,
    repeat: BooleanNumber.FALSE,
  };
}

function functionInfo(fn: WorksheetFunction): IFunctionInfo {
  return {
    functionName: formulaName(fn),
    functionType: FunctionType.User,
    abstract: fn.summary,
    description: `${fn.summary} Gives ${resultText(fn)}.`,
    functionParameter: Object.values(fn.parameters).map(parameterInfo),
  };
}

/** Constructor and name of each worksheet function, as the engine's plugin takes them: `{ function: executors() }`. */
export function executors(
  functions: readonly WorksheetFunction[] = catalogue,
): [Ctor<BaseFunction>, IFunctionNames][] {
  return functions.map((fn) => [executor(fn), formulaName(fn)]);
}

/** What the grid's argument hints and function list show: `{ description: functionHints() }`. */
function functionHints(functions: readonly WorksheetFunction[] = catalogue): IFunctionInfo[] {
  return functions.map(functionInfo);
}

/** What a formula plugin of the engine is configured with. */
export interface Registration {
  readonly function: [Ctor<BaseFunction>, IFunctionNames][];
  readonly description: IFunctionInfo[];
}

/** Executors and hints together, in the form of a grid's `formula` configuration. */
export function registration(functions: readonly WorksheetFunction[] = catalogue): Registration {
  return { function: executors(functions), description: functionHints(functions) };
}
