import type { ICellData, Injector } from "@univerjs/core";
import { IUniverInstanceService, UniverInstanceType, type Workbook } from "@univerjs/core";
import { FormulaDataModel, RegisterOtherFormulaService } from "@univerjs/engine-formula";
import { DataValidationListCacheService } from "@univerjs/preset-sheets-data-validation";
import { cellsOf, holds, readRectangle } from "../../formula/addresses";
import { readReference } from "../../formula/references";
import type { GridCalculation } from "./grid-calculation";

type Register = RegisterOtherFormulaService["registerFormulaWithRange"];
type Value = NonNullable<ReturnType<RegisterOtherFormulaService["getFormulaValueSync"]>>;

/** A list of the grid whose words stand in a range. */
interface Source {
  readonly unitId: string;
  readonly sheetId: string;
  readonly rule: string;
  readonly formula: string;
}

/** The grid's answer that a calculation is over. */
const SUCCESS = 2;

/**
 * Answers what words a list offers from the cells of its range. As published, the grid asks its engine, once for
 * every list, and again after every change.
 */
class ListSources {
  private readonly sources = new Map<string, Source>();
  private count = 0;

  constructor(private readonly injector: Injector) {}

  readonly register: Register = (unitId, sheetId, formula, _ranges, extra) => {
    this.count += 1;
    const id = `list-${this.count}`;
    this.sources.set(id, { unitId, sheetId, rule: String(extra?.ruleId ?? ""), formula });
    return id;
  };

  value(id: string): Value | undefined {
    const source = this.sources.get(id);
    if (source === undefined) return undefined;
    const result = { 0: { 0: this.cells(source) } };
    return {
      formulaId: id,
      status: SUCCESS,
      result,
      callbacks: new Set(),
      extra: { ruleId: source.rule },
    } as Value;
  }

  remove(ids: readonly string[]): void {
    for (const id of ids) this.sources.delete(id);
  }

  /** Lists that offer what stands in cells of a sheet are read anew. */
  refresh(sheetId: string, places: readonly (readonly [number, number])[]): void {
    const lists = this.injector.get(DataValidationListCacheService);
    for (const source of this.sources.values()) {
      const range = this.rangeOf(source);
      if (range?.sheet.getSheetId() !== sheetId) continue;
      if (places.some(([row, column]) => holds(range.area, row, column)))
        lists.markRuleDirty(source.unitId, source.sheetId, source.rule);
    }
  }

  private rangeOf({ unitId, sheetId, formula }: Source) {
    const workbook = this.injector
      .get(IUniverInstanceService)
      .getUnit<Workbook>(unitId, UniverInstanceType.UNIVER_SHEET);
    const reference = readReference(formula.replace(/^=/, ""));
    const area = reference?.kind === "cells" ? readRectangle(reference.place.replaceAll("$", "")) : undefined;
    const named = reference?.sheet;
    const sheet = named ? workbook?.getSheetBySheetName(named) : workbook?.getSheetBySheetId(sheetId);
    return area && sheet ? { area, sheet } : undefined;
  }

  private cells(source: Source): ICellData[][] {
    const range = this.rangeOf(source);
    if (range === undefined) return [];
    const { area, sheet } = range;
    const filled = this.injector.get(FormulaDataModel).getArrayFormulaCellData()[source.unitId]?.[
      sheet.getSheetId()
    ];
    return [...cellsOf(area)].map(([row, column]) => {
      const cell = filled?.[row]?.[column] ?? sheet.getCellMatrix().getValue(row, column);
      return [{ v: cell?.v ?? "" }];
    });
  }
}

/** Lets lists take their words from the cells of their ranges. */
export function answerLists(injector: Injector, calculation: GridCalculation): void {
  const sources = new ListSources(injector);
  const service = injector.get(RegisterOtherFormulaService);
  service.registerFormulaWithRange = sources.register;
  service.getFormulaValueSync = (_unit, _sheet, id) => sources.value(id);
  service.getFormulaValue = async (_unit, _sheet, id) => sources.value(id) ?? null;
  service.deleteFormula = (_unit, _sheet, ids) => sources.remove(ids);
  service.markFormulaDirty = () => undefined;
  calculation.onChangedCells((sheetId, places) => sources.refresh(sheetId, places));
}
