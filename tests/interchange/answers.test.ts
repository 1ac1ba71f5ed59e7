import { beforeAll, expect, it } from "vitest";
import { collect } from "../../src/workbook/answers/collect";
import type { Proposal } from "../../src/workbook/answers/proposal";
import { shareCopy } from "../../src/workbook/share/share-copy";
import { verifyCopy } from "../../src/workbook/share/verify/verify-copy";
import { filledIn, renamed, sorted, widened } from "../workbook/answers/fill";
import { ANSWERS_TO_EIGHT } from "../workbook/answers/invented-answers";
import { planOfEight, planR07 } from "../workbook/answers/plans";
import { allConverted, CSV_OF_ALL_SHEETS, converted, hasLibreOffice } from "./office";

// A copy for the heat treater, filled in, then saved again by LibreOffice without a screen.

const LONG = 300_000;
const TREATER = "Salt Lane Heat Treatment";

let plan: Uint8Array;
let sent: Uint8Array;
let answered: Uint8Array;
/** The answered copy as LibreOffice saves it. */
let saved: Uint8Array;

beforeAll(async () => {
  if (!hasLibreOffice) return;
  plan = await planR07();
  sent = (await shareCopy(plan, { choice: { kind: "for", whom: "heat-treater", name: TREATER } })).bytes;
  answered = await filledIn(
    sent,
    {
      "Answer to heat treatment": {
        "HB5/L5": {
          Price: 6.9,
          "Minimum charge": 110,
          "Back on": "2026-10-19",
          "Temper as run °C": "446 °F",
        },
        "HB6/L6": { Price: 54, "Price for": "lot" },
      },
      "Readings by piece": {
        "HB5/L5/1": { Piece: "R-07-L5-02", "1st HRC": 49, "2nd HRC": "48,9", "3rd HRC": 49.2 },
        "HB5/L5/2": { Piece: "R-07-L5-04", "1st HRC": 56.1, "2nd HRC": 56, "3rd HRC": 55.8 },
      },
    },
    { by: "hardening shop", on: "2026-10-19" },
  );
  saved = converted("answer.xlsx", answered, "xlsx").get("answer.xlsx") ?? new Uint8Array();
}, LONG);

const essence = ({ line, asked, readAs, state, changes }: Proposal) =>
  JSON.stringify([line, asked, readAs, state, changes]);
const found = async (bytes: Uint8Array, name: string) => collect(plan, [{ name, bytes }]);

it.runIf(hasLibreOffice)(
  "comes home alike after LibreOffice saved it, and as the CSV that LibreOffice writes",
  async () => {
    const first = await found(answered, "answer.xlsx");
    // 446 °F is 230 °C; of two pieces of L5 one reads like the run's own, the other above the band.
    expect(first.proposals.find(({ asked }) => asked === "Temper as run °C")?.readAs).toBe("230");
    expect(first.proposals.filter(({ asked }) => asked === "Readings").map(({ state }) => state)).toEqual([
      "fine",
      "doubtful",
    ]);
    const again = await found(saved, "answer.xlsx");
    expect(again.altered).toEqual([]);
    expect(again.proposals.map(essence)).toEqual(first.proposals.map(essence));
    const texts = [...converted("answer.xlsx", answered, CSV_OF_ALL_SHEETS)].filter(([name]) =>
      /Answer|Readings/.test(name.replace(/^answer-/, "")),
    );
    expect(texts).toHaveLength(2);
    const csv = await collect(
      plan,
      texts.map(([name, bytes]) => ({ name, bytes })),
    );
    expect(csv.proposals.map(essence).sort()).toEqual(first.proposals.map(essence).sort());
  },
  LONG,
);

it.runIf(hasLibreOffice)(
  "is told apart: saved again by another program, answered, altered",
  async () => {
    const resaved = converted("copy.xlsx", sent, "xlsx").get("copy.xlsx") ?? new Uint8Array();
    expect(await verifyCopy(plan, resaved)).toMatchObject({
      digest: "as stated",
      answers: 0,
      isSavedElsewhere: true,
      isAltered: false,
      isPlanChanged: false,
    });
    expect(await verifyCopy(plan, saved)).toMatchObject({
      digest: "as stated",
      answers: 14,
      isSavedElsewhere: true,
      differences: [],
    });
  },
  LONG,
);

it.runIf(hasLibreOffice)(
  "comes home alike for the run of eight lines: rows sorted, columns added, sheet renamed, saved by LibreOffice",
  async () => {
    const eight = await planOfEight();
    let answers = 0;
    const straightOnes: Uint8Array[] = [];
    const handledOnes = new Map<string, Uint8Array>();
    for (const [at, { whom, name, answers: given, head }] of ANSWERS_TO_EIGHT.entries()) {
      const [table = ""] = Object.keys(given);
      const copy = await shareCopy(eight, { choice: { kind: "for", whom, name } });
      straightOnes.push(await filledIn(copy.bytes, given, head));
      const handled = await filledIn(
        copy.bytes,
        given,
        head,
        sorted(table),
        widened(table),
        renamed(table, "unsere Antwort"),
      );
      handledOnes.set(`back ${at}.xlsx`, handled);
    }
    const savedOnes = allConverted(handledOnes, "xlsx");
    for (const [at, straight] of straightOnes.entries()) {
      const name = `back ${at}.xlsx`;
      const [first, again] = [
        await collect(eight, [{ name, bytes: straight }]),
        await collect(eight, [{ name, bytes: savedOnes.get(name) ?? new Uint8Array() }]),
      ];
      expect(again.altered).toEqual([]);
      expect(again.remarks).toEqual([]);
      expect([again.open, again.answered]).toEqual([first.open, first.answered]);
      expect(again.proposals.map(essence).sort()).toEqual(first.proposals.map(essence).sort());
      expect(again.proposals.map(({ from }) => from)).toEqual(first.proposals.map(({ from }) => from));
      answers += first.answered;
    }
    // Five lines with three answers each; three with two and three contents; the heat treater's 3, 2 and 3.
    expect(answers).toBe(5 * 3 + 3 * 2 + 3 + 3 + 2 + 3);
  },
  LONG,
);
