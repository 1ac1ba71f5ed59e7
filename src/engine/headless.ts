import {
  type Injector,
  type IWorkbookData,
  LocaleType,
  LogLevel,
  Univer,
  UniverInstanceType,
} from "@univerjs/core";
import { UniverFormulaEnginePlugin } from "@univerjs/engine-formula";
import { catalogue } from "../functions/catalogue";
import type { WorksheetFunction } from "../functions/declare";
import { repairArrayConstants } from "./array-constants";
import { executors } from "./register";

/** A running engine without a screen. */
export interface Headless {
  readonly injector: Injector;
  dispose(): void;
}

/** Starts the engine on one workbook. Nothing is calculated until it is asked for. */
export function startEngine(
  workbook: Partial<IWorkbookData>,
  functions: readonly WorksheetFunction[] = catalogue,
): Headless {
  repairArrayConstants();
  const univer = new Univer({
    locale: LocaleType.EN_US,
    locales: { [LocaleType.EN_US]: {} },
    logLevel: LogLevel.SILENT,
  });
  univer.registerPlugin(UniverFormulaEnginePlugin, { function: executors(functions) });
  univer.createUnit(UniverInstanceType.UNIVER_SHEET, workbook);
  const injector = univer.__getInjector();
  return { injector, dispose: () => univer.dispose() };
}
