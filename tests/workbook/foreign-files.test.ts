import { readdirSync, readFileSync } from "node:fs";
import { isDeepStrictEqual } from "node:util";
import { expect, it } from "vitest";
import { holds } from "../../src/formula/addresses";
import { contentOf } from "../../src/workbook/file/cell-content";
import { FileRefusal } from "../../src/workbook/file/package/file-refusal";
import { recalculate } from "../../src/workbook/file/patch/recalculate";
import { readLiveWorkbook } from "../../src/workbook/file/read/live-workbook";
import { faultsOf } from "./packages";

const LONG = 300_000;

/** What was typed, by sheet and cell: all that no formula makes. */
function typedIn(bytes: Uint8Array): unknown[] {
  const live = readLiveWorkbook(bytes);
  return live.sheets.flatMap(({ listed, stored, formulas }) => {
    const isMade = (row: number, column: number) =>
      [...formulas.values()].some(({ area }) => holds(area, row, column));
    return stored.rows
      .flatMap(({ cells }) => cells)
      .filter(({ row, column, formula }) => formula === undefined && !isMade(row, column))
      .map((cell) => [listed.name, cell.row, cell.column, cell.style, contentOf(cell, live.strings, false)]);
  });
}

function workbooksIn(folder: string): string[] {
  const found = readdirSync(folder, { recursive: true, encoding: "utf8" });
  return found.filter((file) => /\.xls[xm]$/i.test(file)).map((file) => `${folder}/${file}`);
}

/** Every workbook that lies here, written by other programs: those of the packages installed, and those kept for tests. */
const FILES = ["node_modules", "tests/workbook/files"].flatMap(workbooksIn);

it(
  "every workbook of others is recalculated or refused with a sentence, none is damaged",
  async () => {
    const counts = { opened: 0, refused: 0, damaged: [] as string[] };
    for (const file of FILES) {
      const before = new Uint8Array(readFileSync(file));
      const done = await recalculate(before).catch((fault: unknown) => fault);
      if (done instanceof FileRefusal) {
        counts.refused += 1;
        continue;
      }
      const { bytes } = done as Awaited<ReturnType<typeof recalculate>>;
      counts.opened += 1;
      const isSame = isDeepStrictEqual(typedIn(bytes), typedIn(before));
      if (!isSame || faultsOf(bytes).length > faultsOf(before).length) counts.damaged.push(file);
    }
    expect(FILES.length).toBeGreaterThan(2);
    expect(counts.opened + counts.refused).toBe(FILES.length);
    expect(counts.damaged).toEqual([]);
  },
  LONG,
);
