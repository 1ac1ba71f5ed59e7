import * as about from "./about/examples";
import * as blade from "./blade/examples";
import type { Example, WorksheetFunction } from "./declare";
import * as hardening from "./hardening/examples";
import * as hardness from "./hardness/examples";
import * as inspection from "./inspection/examples";
import * as mechanics from "./mechanics/examples";
import * as money from "./money/examples";
import * as run from "./run/examples";
import * as shape from "./shape/examples";
import * as steel from "./steel/examples";
import * as stock from "./stock/examples";
import * as tempering from "./tempering/examples";

const byName: Readonly<Record<string, readonly Example[]>> = {
  ...steel,
  ...hardening,
  ...tempering,
  ...inspection,
  ...blade,
  ...hardness,
  ...shape,
  ...mechanics,
  ...stock,
  ...run,
  ...money,
  ...about,
};

/**
 * The worked cases of a function. They stand apart from the declarations because the functions
 * load with every workbook, and only the pane's list of functions and the tests read them.
 */
export function examplesOf({ name }: Pick<WorksheetFunction, "name">): readonly Example[] {
  return byName[name] ?? [];
}
