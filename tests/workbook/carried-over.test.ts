import { describe, expect, it } from "vitest";
import { collect } from "../../src/workbook/answers/collect";
import { canBeTaken } from "../../src/workbook/answers/proposal";
import { takeAnswers } from "../../src/workbook/answers/take";
import { patchWorkbook } from "../../src/workbook/file/patch/patch-workbook";
import { readLiveWorkbook } from "../../src/workbook/file/read/live-workbook";
import { shareCopy } from "../../src/workbook/share/share-copy";
import { carriedOver } from "../../src/workbook/sheets/carried-over";
import { FIRST_ROW } from "../../src/workbook/sheets/parts/table-sheet";
import { planTable } from "../../src/workbook/sheets/plan-table";
import { planningFile } from "../../src/workbook/sheets/planning-file";
import { planningTemplate } from "../../src/workbook/sheets/planning-template";
import { filledIn } from "./answers/fill";
import { planOfEight } from "./answers/plans";
import { faultsOf } from "./packages";
import { type StoredValues, storedValues } from "./template-cells";

const LONG = 300_000;

describe("an older plan carried over", () => {
  it(
    "keeps every line as it was typed, with room for more",
    async () => {
      const old = readLiveWorkbook(await planOfEight());
      const grown = carriedOver(planningTemplate(undefined, 20), old);
      expect(grown.sheets.find(({ name }) => name === "Lines")?.lines).toEqual([4, 23]);
      const again = readLiveWorkbook(await planningFile(grown));
      expect(planTable(again)).toEqual(planTable(old));
      expect(() => carriedOver(planningTemplate(undefined, 4), old)).toThrow(/larger --lines/);
    },
    LONG,
  );

  it(
    "keeps the log of answers and the register, however long, so that nothing is taken twice",
    async () => {
      const supplier = { kind: "for", whom: "supplier", name: "Old Quay Metals" } as const;
      const first = await planOfEight();
      const { bytes: sent } = await shareCopy(first, { choice: supplier });
      const order = (heat: string) =>
        filledIn(sent, { "Answer to order": { "K6/S6": { "Heat no.": heat, Price: 9.1 } } });
      const [one, corrected] = [await order("T6-1"), await order("T6-2")];
      const take = async (plan: Uint8Array, bytes: Uint8Array) => {
        const { proposals } = await collect(plan, [{ name: "answer.xlsx", bytes }]);
        return takeAnswers(plan, proposals.filter(canBeTaken), "2026-09-23");
      };
      const taken = await take(await take(first, one), corrected);
      // More copies than a new register has rows.
      const sent32 = Array.from({ length: 32 }, (_, at) => ({
        row: FIRST_ROW + at,
        column: 0,
        content: { value: at + 1 },
      }));
      const old = (await patchWorkbook(taken, new Map([["Register", sent32]]))).bytes;
      const grown = await planningFile(carriedOver(planningTemplate(undefined, 20), readLiveWorkbook(old)));
      expect(faultsOf(grown)).toEqual([]);
      const [before, after] = [await storedValues(old), await storedValues(grown)];
      const filled = ({ rows }: StoredValues, sheet: string) =>
        rows(sheet)
          .slice(4)
          .filter(([cell]) => cell !== undefined && cell !== "");
      expect(filled(after, "Answers")).toHaveLength(3);
      expect(filled(after, "Answers")).toEqual(filled(before, "Answers"));
      expect(filled(after, "Register")).toHaveLength(32);
      // The first answer too, although another one was taken for the same question since.
      for (const bytes of [one, corrected]) {
        const { proposals } = await collect(grown, [{ name: "answer.xlsx", bytes }]);
        expect(proposals.map(({ state }) => state)).toEqual(["taken", "taken"]);
      }
    },
    LONG,
  );
});
