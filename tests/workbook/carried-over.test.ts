import { describe, expect, it } from "vitest";
import { readLiveWorkbook } from "../../src/workbook/file/read/live-workbook";
import { carriedOver } from "../../src/workbook/sheets/carried-over";
import { planTable } from "../../src/workbook/sheets/plan-table";
import { planningFile } from "../../src/workbook/sheets/planning-file";
import { planningTemplate } from "../../src/workbook/sheets/planning-template";
import { eightLines } from "./eight-lines";

const LONG = 300_000;

describe("an older plan carried over", () => {
  it(
    "keeps every line as it was typed, with room for more",
    async () => {
      const old = readLiveWorkbook(await planningFile(planningTemplate(eightLines())));
      const grown = carriedOver(planningTemplate(undefined, 20), old);
      expect(grown.sheets.find(({ name }) => name === "Lines")?.lines).toEqual([4, 23]);
      const again = readLiveWorkbook(await planningFile(grown));
      expect(planTable(again)).toEqual(planTable(old));
      expect(() => carriedOver(planningTemplate(undefined, 4), old)).toThrow(/larger --lines/);
    },
    LONG,
  );
});
