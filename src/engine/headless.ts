import {
  type Injector,
  type IWorkbookData,
  LocaleType,
  LogLevel,
  Univer,
  UniverInstanceType,
} from "@univerjs/core";
import { IFunctionService, UniverFormulaEnginePlugin } from "@univerjs/engine-formula";
import { catalogue } from "../functions/catalogue";
import type { WorksheetFunction } from "../functions/declare";
import { repairArrayConstants } from "./array-constants";
import { refuseVastLists } from "./budget";
import { makeValuesLight } from "./light-values";
import { executors } from "./register";

/** A running engine without a screen. */
export interface Headless {
  readonly injector: Injector;
  dispose(): void;
}

/** Lets no function or operator make more cells on the way than fit into memory. */
function keepListsSmall(injector: Injector): void {
  for (const [name, executor] of injector.get(IFunctionService).getExecutors()) {
    const calculate = executor.calculate.bind(executor);
    executor.calculate = (...values) => {
      refuseVastLists(String(name), values as never);
      return calculate(...values);
    };
  }
}

/** Starts the engine on one workbook. Nothing is calculated until it is asked for. */
export function startEngine(
  workbook: Partial<IWorkbookData>,
  functions: readonly WorksheetFunction[] = catalogue,
): Headless {
  makeValuesLight();
  repairArrayConstants();
  const univer = new Univer({
    locale: LocaleType.EN_US,
    locales: { [LocaleType.EN_US]: {} },
    logLevel: LogLevel.SILENT,
  });
  univer.registerPlugin(UniverFormulaEnginePlugin, { function: executors(functions) });
  univer.createUnit(UniverInstanceType.UNIVER_SHEET, workbook);
  const injector = univer.__getInjector();
  keepListsSmall(injector);
  return { injector, dispose: () => univer.dispose() };
}
