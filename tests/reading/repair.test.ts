import { describe, expect, test } from "vitest";
import type { FormulaPart, Work } from "../../src/host/port";
import { findBroken } from "../../src/taskpane/repair/repair";
import { sheetPort } from "./sheet-port";

function part(
  sheet: string,
  cells: readonly (readonly [string, string])[],
  isProtected = false,
): FormulaPart {
  const formulas = cells.map(([formula]) => [formula]);
  const unknownNames = cells.map(([, value]) => [value === "#NAME?"]);
  return { sheet, isProtected, row: 4, column: 27, formulas, unknownNames, done: 0.5 };
}

function work(): Work & { readonly seen: number[]; stop: () => void } {
  const stopper = new AbortController();
  const seen: number[] = [];
  return { signal: stopper.signal, progress: (done) => seen.push(done), seen, stop: () => stopper.abort() };
}

/**
 * Forms in which the names of custom functions were seen in files: `_xldudf_NS_NAME` (public repositories), with
 * `[2]!` or a path in front (issue 2568 of the office-js repository), in lower case after LibreOffice.
 */
const PLAN = part("Run plan", [
  ['=BLADE.CARBON("1095")', "0.95"],
  ['=BLADE.CARBON("1084")', "#NAME?"],
  ['=[2]!_xldudf_BLADE_CARBON("1095")+1', "1.95"],
  ['=_xldudf_blade_carbon("_xldudf_BLADE_CARBON(")', "#NAME?"],
  ['=BLADE.CARBIN("1095")', "#NAME?"],
  ["=SUM(A1:A3)", "#NAME?"],
  ["1095", "1095"],
  ['="BLADE.CARBON("', "BLADE.CARBON("],
]);

describe("looking through a workbook", () => {
  test("finds what shows #NAME? or has a broken name, and leaves the rest", async () => {
    const { broken, ours, isComplete } = await findBroken(sheetPort({}, [PLAN]).port, work());
    expect(isComplete).toBe(true);
    expect(ours).toBe(5);
    expect(broken.map(({ address, formula, canBeMended }) => [address, formula, canBeMended])).toEqual([
      ["'Run plan'!AB6", '=BLADE.CARBON("1084")', true],
      ["'Run plan'!AB7", '=BLADE.CARBON("1095")+1', true],
      ["'Run plan'!AB8", '=BLADE.CARBON("_xldudf_BLADE_CARBON(")', true],
      ["'Run plan'!AB9", '=BLADE.CARBIN("1095")', false],
    ]);
  });

  test("a protected sheet is named once and nothing in it is to be mended", async () => {
    const guarded = { ...PLAN, sheet: "Costs", isProtected: true };
    const { broken, protectedSheets } = await findBroken(sheetPort({}, [guarded]).port, work());
    expect(protectedSheets).toEqual(["Costs"]);
    expect(broken.some(({ canBeMended }) => canBeMended)).toBe(false);
  });

  test("tells how far it is and stops when told to", async () => {
    const stopped = work();
    const parts = [PLAN, { ...PLAN, sheet: "Second", done: 1 }];
    const { port } = sheetPort({}, parts);
    const progress = (done: number) => {
      stopped.seen.push(done);
      stopped.stop();
    };
    const found = await findBroken(port, { ...stopped, progress });
    expect(found.isComplete).toBe(false);
    expect(found.ours).toBe(5);
    expect(stopped.seen).toEqual([0.5]);
  });
});
