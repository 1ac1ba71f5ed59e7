import {
  type Injector,
  LifecycleService,
  LifecycleStages,
  LocaleType,
  LogLevel,
  mergeLocales,
  type Plugin,
  type PluginCtor,
  Univer,
} from "@univerjs/core";
import { FUniver } from "@univerjs/core/facade";
import { UniverSheetsConditionalFormattingPreset } from "@univerjs/preset-sheets-conditional-formatting";
import conditionalWords from "@univerjs/preset-sheets-conditional-formatting/locales/en-US";
import { UniverSheetsCorePreset } from "@univerjs/preset-sheets-core";
import coreWords from "@univerjs/preset-sheets-core/locales/en-US";
import { UniverSheetsDataValidationPreset } from "@univerjs/preset-sheets-data-validation";
import validationWords from "@univerjs/preset-sheets-data-validation/locales/en-US";
import { UniverSheetsTablePreset } from "@univerjs/preset-sheets-table";
import tableWords from "@univerjs/preset-sheets-table/locales/en-US";
import { TriggerCalculationController } from "@univerjs/sheets-formula";
import { registration } from "../../engine/register";
import { drawCurves } from "./cell-curves";
import { type CellSentence, cellSentences } from "./cell-sentence";
import { drawChangedRows } from "./draw-changed-rows";
import { drawWhenNeeded } from "./draw-when-needed";
import { GridCalculation } from "./grid-calculation";
import { guardConditions } from "./guard-conditions";
import { guardCopiedFrame } from "./guard-copied-frame";
import { guardEditor } from "./guard-editor";
import { guardFormulas } from "./guard-formulas";
import { guardLayers } from "./guard-layers";
import { guardLineBreaks } from "./guard-line-breaks";
import { guardListMarks } from "./guard-list-marks";
import { guardNumberMarks } from "./guard-number-marks";
import { guardPaste } from "./guard-paste";
import { guardValidation } from "./guard-validation";
import { answerLists } from "./offered-lists";
import { offerWords } from "./offered-words";

type Configured = readonly [PluginCtor<Plugin>, ConstructorParameters<PluginCtor<Plugin>>[0]];

/**
 * The parts of the grid that are switched on. Its own header, toolbar, footer and formula bar stay
 * off: they fail accessibility checks, and the page has its own.
 */
function presets(container: HTMLElement) {
  return [
    UniverSheetsCorePreset({
      container,
      header: false,
      toolbar: false,
      footer: false,
      formulaBar: false,
      disableAutoFocus: true,
      // Grades such as 1095 are words: text that looks like a number is right here.
      sheets: { disableForceStringAlert: true, disableForceStringMark: true },
      formula: registration(),
    }),
    UniverSheetsConditionalFormattingPreset(),
    UniverSheetsDataValidationPreset({ showEditOnDropdown: false }),
    UniverSheetsTablePreset(),
  ];
}

/** Filter buttons and a name tag on every table: they covered the headings of narrow columns and the row above. */
const LEFT_OUT = "SHEET_TABLE_UI_PLUGIN";

/** Tables keep the colours of their cells: the grid's own stripes said nothing and looked like a meaning. */
const TABLES = "SHEET_TABLE_PLUGIN";
const PLAIN_TABLES = { userThemes: [{ name: "plain", style: {} }], defaultThemeIndex: 0 };

/** Later presets replace a plugin of the same name. */
function plugins(container: HTMLElement): Iterable<Configured> {
  const listed = presets(container).flatMap((preset) => preset.plugins);
  const pairs = listed.map(
    (entry): Configured => (Array.isArray(entry) ? [entry[0], entry[1]] : [entry, undefined]),
  );
  const named = pairs.map(([plugin, given]): [string, Configured] => [
    plugin.pluginName,
    [plugin, plugin.pluginName === TABLES ? PLAIN_TABLES : given],
  ]);
  return new Map(named.filter(([name]) => name !== LEFT_OUT)).values();
}

export interface StartedGrid {
  readonly api: FUniver;
  readonly injector: Injector;
  readonly calculation: GridCalculation;
  readonly sentenceOf: CellSentence;
  /** Resolves once the first workbook is drawn; before, the grid takes no selection. */
  drawn(): Promise<void>;
}

/** The grid is drawn dark where the whole page is. */
function followTheme(api: FUniver): void {
  const dark = matchMedia("(prefers-color-scheme: dark)");
  api.toggleDarkMode(dark.matches);
  dark.addEventListener("change", () => api.toggleDarkMode(dark.matches));
}

/** Takes away what would start the grid's own engine after every change. It stands from the first workbook on. */
function leaveCalculatingToWorker(injector: Injector): void {
  injector.get(LifecycleService).lifecycle$.subscribe(() => {
    if (injector.has(TriggerCalculationController)) injector.delete(TriggerCalculationController);
  });
}

/** Starts the grid with our worksheet functions, without a workbook. */
export function startGrid(container: HTMLElement): StartedGrid {
  guardLayers();
  guardCopiedFrame();
  guardLineBreaks();
  drawChangedRows();
  drawWhenNeeded();
  const univer = new Univer({
    locale: LocaleType.EN_US,
    locales: { [LocaleType.EN_US]: mergeLocales(coreWords, conditionalWords, validationWords, tableWords) },
    logLevel: LogLevel.WARN,
  });
  for (const [plugin, options] of plugins(container)) univer.registerPlugin(plugin, options);
  const api = FUniver.newAPI(univer);
  followTheme(api);
  const injector = univer.__getInjector();
  leaveCalculatingToWorker(injector);
  guardNumberMarks(injector);
  guardListMarks(injector);
  drawCurves(injector);
  const calculation = new GridCalculation(injector);
  answerLists(injector, calculation);
  const drawn = async () => {
    await injector.get(LifecycleService).onStage(LifecycleStages.Rendered);
    guardValidation(injector);
    guardConditions(injector);
    guardEditor(injector);
    guardFormulas(injector);
    guardPaste(injector);
    offerWords(api, injector);
  };
  return { api, injector, calculation, sentenceOf: cellSentences(injector, calculation.results), drawn };
}
