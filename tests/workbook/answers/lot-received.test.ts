import { beforeAll, describe, expect, it } from "vitest";
import { functionNamed } from "../../../src/functions/catalogue";
import { evaluate } from "../../../src/functions/evaluate";
import { LOT } from "../../../src/taskpane/help/guide";
import { collect } from "../../../src/workbook/answers/collect";
import { takeAnswers } from "../../../src/workbook/answers/take";
import { type ChangedCell, patchWorkbook } from "../../../src/workbook/file/patch/patch-workbook";
import { shareCopy } from "../../../src/workbook/share/share-copy";
import { FIRST_ROW, HEADINGS } from "../../../src/workbook/sheets/parts/table-sheet";
import { type StoredValues, storedValues } from "../template-cells";
import { filledIn } from "./fill";
import { planOfEight } from "./plans";

// The swords of K5 come back hardened: the heat treater's three readings come home as answers, the shop reads two
// blades more, counts the pieces and ships them. The readings are invented, the same that the guide shows.

const LONG = 300_000;
const [FIRST, SECOND, THIRD, ...OWN] = LOT.readings;
const KEY = "B5/K5";

let values: StoredValues;

/** Types into a sheet: in the rows that begin so, or in the first that are free. */
async function typed(
  plan: Uint8Array,
  sheet: string,
  rows: readonly (readonly [row: number, entries: Readonly<Record<string, number | string>>])[],
): Promise<Uint8Array> {
  const headings = (await storedValues(plan)).rows(sheet)[HEADINGS] ?? [];
  const cells = rows.flatMap(([row, entries]) =>
    Object.entries(entries).map(([heading, value]): ChangedCell => {
      const column = headings.indexOf(heading);
      expect(column, heading).toBeGreaterThanOrEqual(0);
      return { row, column, content: { value } };
    }),
  );
  return (await patchWorkbook(plan, new Map([[sheet, cells]]))).bytes;
}

async function rowOf(plan: Uint8Array, sheet: string, column: number, word: string): Promise<number> {
  return (await storedValues(plan))
    .rows(sheet)
    .findIndex((row, at) => at >= FIRST_ROW && row[column] === word);
}

const reading = (blade: string, value: number) => ({
  "Blade no.": blade,
  Line: "K5",
  Batch: "B5",
  "1st": value,
  "2nd": value,
  "3rd": value,
});

beforeAll(async () => {
  const plan = await planOfEight();
  const choice = { kind: "for", whom: "heat-treater", name: "Salt Lane Heat Treatment" } as const;
  const { bytes } = await shareCopy(plan, { choice });
  const piece = (number: number, value = 0) => ({
    Piece: `T-08-K5-0${number}`,
    "1st HRC": value,
    "2nd HRC": value,
    "3rd HRC": value,
  });
  const back = await filledIn(
    bytes,
    {
      "Answer to heat treatment": { [KEY]: { "Back on": "2026-10-28", "Temper as run °C": "698 °F" } },
      "Readings by piece": {
        [`${KEY}/1`]: piece(1, FIRST),
        [`${KEY}/2`]: piece(2, SECOND),
        [`${KEY}/3`]: piece(3, THIRD),
      },
    },
    { by: "hardening shop", on: "2026-10-28" },
  );
  const { proposals, remarks } = await collect(plan, [{ name: "salt-lane.xlsx", bytes: back }]);
  expect(remarks).toEqual([]);
  expect(proposals.map(({ state }) => state)).toEqual(Array.from({ length: 5 }, () => "fine"));
  const after = await takeAnswers(plan, proposals, "2026-10-29");
  const free = (await storedValues(after))
    .rows("Hardness readings")
    .findIndex((row, at) => at >= FIRST_ROW && row[0] === undefined);
  const read = await typed(
    after,
    "Hardness readings",
    OWN.map((value, at) => [free + at, reading(`T-08-K5-0${at + 4}`, value)] as const),
  );
  const counted = await typed(read, "Lots received", [
    [await rowOf(read, "Lots received", 1, "K5"), { "Pieces back": LOT.sent }],
  ]);
  const sent = await typed(counted, "Shipping", [
    [FIRST_ROW, { Line: "K5", Pieces: LOT.good, Sent: 46_344 }],
  ]);
  values = await storedValues(sent);
}, LONG);

const answerOf = (name: string, ...given: unknown[]) => {
  const fn = functionNamed(name);
  return fn === undefined ? [] : evaluate(fn, given);
};

const lot = (heading: string) => {
  const rows = values.rows("Lots received");
  return rows.find((row) => row[1] === "K5")?.[rows[HEADINGS]?.indexOf(heading) ?? -1];
};

describe("a lot that came back hardened", () => {
  it("has the facts of the answer on the plan's own sheet", () => {
    // 698 °F is 370 °C.
    expect(lot("Temper as run °C")).toBe(LOT.temper);
    expect(lot("Back on")).toBe("2026-10-28");
  });

  it("is summed up as READINGS sums the same blades up, and judged by SAMPLE_PLAN", () => {
    const [[count, mean] = []] = answerOf("READINGS", [LOT.readings], LOT.low, LOT.high);
    expect([lot("Blades read"), lot("Mean HRC")]).toEqual([count, expect.closeTo(Number(mean), 9)]);
    expect([lot("Lowest"), lot("Highest")]).toEqual([Math.min(...LOT.readings), Math.max(...LOT.readings)]);
    const [[, sample, accept] = []] = answerOf("SAMPLE_PLAN", LOT.sent, 2.5, "S-2");
    expect([lot("To be read"), lot("Outside allowed"), lot("Outside the band")]).toEqual([sample, accept, 0]);
    expect(lot("Lot")).toBe("PASS");
  });

  it("is the coupon of TEMPER_FIT for the next run", () => {
    const [[knownC, knownHrc] = []] = answerOf("TEMPER_FIT", "5160", [[LOT.temper]], [[LOT.mean]]);
    expect([lot("Coupon: known °C"), Number(lot("Coupon: known HRC"))]).toEqual([
      knownC,
      expect.closeTo(Number(knownHrc), 6),
    ]);
  });

  it("feeds what HISTORY reads once it is sent", () => {
    const rows = values.rows("Past lots");
    const past = rows.slice(FIRST_ROW).filter(([run]) => run === "T-08");
    expect(past.map((row) => row.slice(1, 4))).toEqual([["Arming sword", LOT.sent, LOT.good]]);
    const [history] = answerOf("HISTORY", [["item", "started", "good"], past[0]?.slice(1, 4) ?? []]);
    expect(history?.slice(0, 4)).toEqual(["Arming sword", 1, LOT.sent, LOT.good]);
    expect(history?.[4]).toBeCloseTo(Number(past[0]?.[rows[HEADINGS]?.indexOf("Yield") ?? -1]), 9);
  });
});
