import { strFromU8, unzipSync } from "fflate";
import { beforeAll, describe, expect, it } from "vitest";
import { type Collected, collect } from "../../../src/workbook/answers/collect";
import { takeAnswers } from "../../../src/workbook/answers/take";
import { csvFiles } from "../../../src/workbook/share/csv";
import { registered } from "../../../src/workbook/share/register";
import { type ShareCopy, shareCopy } from "../../../src/workbook/share/share-copy";
import { verifyCopy } from "../../../src/workbook/share/verify/verify-copy";
import { faultsOf } from "../packages";
import { storedValues } from "../template-cells";
import { filledIn } from "./fill";
import { planR07 } from "./plans";

// An enquiry to a supplier whom R-07 does not buy from; every firm and price is invented. Copies and plans are read by
// another .xlsx library; costs are mass of the bars (width × thickness × length × density) × price.

const LONG = 300_000;
const RIVAL = "Grey Heron Steel";
const OTHERS = ["Brackwater", "Old Quay", "Salt Lane", "Marrow", "Low Meadow Guild"];

let plan: Uint8Array;
let copy: ShareCopy;
let answered: Uint8Array;
let found: Collected;

const enquiry = (name: string, lines?: readonly string[]) =>
  shareCopy(plan, { choice: { kind: "for", whom: "supplier", name, ...(lines && { enquiry: lines }) } });
const wordsIn = (bytes: Uint8Array) =>
  Object.values(unzipSync(bytes))
    .map((part) => strFromU8(part))
    .join("\n");
const cellsOf = async (bytes: Uint8Array, sheet: string) =>
  (await storedValues(bytes)).rows(sheet).map((row) => row.map((cell) => String(cell ?? "")));

beforeAll(async () => {
  plan = await planR07();
  copy = await enquiry(RIVAL);
  answered = await filledIn(
    copy.bytes,
    {
      "Answer to enquiry": {
        "L1/S1": { Price: 9.1, "Week of delivery": 43, "Minimum charge": 50, Freight: 0 },
        "L2/S2": { Price: 5, "Price for": "lb", "Week of delivery": "2026-W43" },
        "L3/S3": { Price: "700 / 100 kg", "Week of delivery": "KW 43" },
        "L5/S5": {
          Price: "5,20 EUR",
          "Bar lengths in stock mm": "3 m; 6 m",
          "Week of delivery": 43,
          Remarks: "hot rolled",
        },
      },
    },
    { by: "sales", on: "2026-09-20" },
  );
  found = await collect(plan, [{ name: "heron.xlsx", bytes: answered }]);
}, LONG);

describe("an enquiry to a supplier whom the plan does not buy from", () => {
  it("asks about every line that steel is bought for, on pages addressed to that one, and tells no other name", async () => {
    expect(faultsOf(copy.bytes)).toEqual([]);
    expect(copy.sheets).toEqual(["Steel enquiry", "Answer to enquiry"]);
    const answers = await cellsOf(copy.bytes, "Answer to enquiry");
    expect(answers.slice(4).map((row) => row[1])).toEqual(["L1", "L2", "L3", "L4", "L5"]);
    const paper = await cellsOf(copy.bytes, "Steel enquiry");
    const beside = (label: string) =>
      paper.flatMap((row) => row.flatMap((cell, at) => (cell === label ? [row[at + 1]] : [])));
    // Three lines of one supplier and two of the other stand on two pages.
    expect([...new Set(beside("To"))]).toEqual([RIVAL]);
    expect(beside("Supplier")).toEqual([RIVAL, RIVAL]);
    expect(beside("Page")).toEqual(["1 of 2", "2 of 2"]);
    const items = paper.map(([first]) => first).filter((cell) => cell?.startsWith("Item "));
    expect(items).toEqual(["Item L1", "Item L2", "Item L3", "Item L4", "Item L5"]);
    const words = wordsIn(copy.bytes);
    expect(OTHERS.filter((other) => words.includes(other))).toEqual([]);
    expect(copy.travels.join("\n")).toContain(`Enquiry about all lines, no order: Steel supplier: ${RIVAL}`);
    expect(copy.travels.join("\n")).toContain("Cells for an answer: 40 in 5 lines");
  });

  it(
    "asks about the lines that are named, another supplier's too, and verifies",
    async () => {
      for (const name of [RIVAL, "old quay metals"]) {
        const { bytes, sheets } = await enquiry(name, ["L1", "l4"]);
        expect(sheets).toEqual(["Steel enquiry", "Answer to enquiry"]);
        const paper = await cellsOf(bytes, "Steel enquiry");
        const items = paper.map(([first]) => first).filter((cell) => cell?.startsWith("Item "));
        expect(items).toEqual(["Item L1", "Item L4"]);
        expect(paper.filter(([first]) => first === "Grade, standard")).toHaveLength(2);
        // The two stand on two pages of the plan, and on one of the enquiry.
        expect(paper.flatMap((row) => row.filter((cell) => /^\d of \d$/.test(cell)))).toEqual(["1 of 1"]);
        expect(wordsIn(bytes)).not.toContain("Brackwater");
        expect(await verifyCopy(plan, bytes)).toMatchObject({ isSound: true, isAltered: false });
      }
      expect(await verifyCopy(plan, copy.bytes)).toMatchObject({ isSound: true, isAltered: false });
    },
    LONG,
  );

  it("is refused for lines that nothing is bought for", async () => {
    await expect(enquiry(RIVAL, ["L9"])).rejects.toThrow(
      'The plan buys no steel for a line "L9". It does for: L1, L2, L3, L4, L5.',
    );
  });
});

describe("its answer", () => {
  it("is an offer: a row each on the sheet Offers, the price that the plan counts with untouched", () => {
    expect(found.remarks).toEqual([]);
    expect(found.altered).toEqual([]);
    const changes = found.proposals.flatMap((proposal) => proposal.changes);
    expect(new Set(changes.map(({ sheet }) => sheet))).toEqual(new Set(["Offers"]));
    const price = (line: string) => found.proposals.find((one) => one.line === line && one.asked === "Price");
    expect(price("L5/S5")).toMatchObject({ readAs: "5.2", unit: "EUR a kg", from: "sales" });
    // The plan counts with 7.10 a kg.
    expect(price("L5/S5")?.why).toEqual(["5.2 a kg is 27 % below the 7.1 of the plan"]);
    expect(price("L2/S2")).toMatchObject({ readAs: "5", unit: "EUR a lb" });
    // 700 for 100 kg is 7 a kg.
    expect(price("L3/S3")).toMatchObject({ readAs: "7", unit: "EUR a kg" });
  });

  it(
    "stands beside the other offers once it is taken, and the cheapest mix counts it",
    async () => {
      const accepted = found.proposals.filter(({ state }) => state === "fine" || state === "doubtful");
      expect(accepted).toHaveLength(found.proposals.length);
      const after = await takeAnswers(plan, accepted, "2026-09-21");
      expect(faultsOf(after)).toEqual([]);
      const values = await storedValues(after);
      const rows = values.rows("Offers").filter(([supplier]) => supplier === RIVAL);
      const own = (...columns: number[]) => rows.map((row) => columns.map((at) => row[at]));
      expect(own(1, 2, 3, 4, 5)).toEqual([
        ["52100", 50, 3, 9.1, "kg"],
        ["80CrV2", 38, 4, 5, "lb"],
        ["1075", 60, 2.5, 7, "kg"],
        ["51CrV4", 30, 8, 5.2, "kg"],
      ]);
      expect(rows[0]?.slice(8, 11)).toEqual([50, 0, "W43"]);
      expect(rows[3]?.slice(6, 13)).toEqual([
        "3000; 6000",
        undefined,
        undefined,
        undefined,
        "W43",
        undefined,
        "hot rolled",
      ]);
      const best = values.rows("Best offer");
      const head = best.find(([first]) => first === "steel");
      expect(head?.slice(3, 6)).toEqual(["Brackwater Steel Yard", RIVAL, "Old Quay Metals"]);
      // Ten pieces of 743.6 mm, 4 a bar of 3 m and 8 a bar of 6 m: 9 m of bar of 51CrV4 30 × 8 at 5.20 a kg.
      const side = best.filter(([first]) => first === "51CrV4").at(-1);
      expect(side?.[4]).toBeCloseTo(9 * 0.03 * 0.008 * 7850 * 5.2, 6);
      const again = await collect(after, [{ name: "heron.xlsx", bytes: answered }]);
      expect(new Set(again.proposals.map(({ state }) => state))).toEqual(new Set(["taken"]));
    },
    LONG,
  );

  it(
    "knows whose it is as CSV too; a table without its head is known by the register, else it is doubtful",
    async () => {
      const [csv] = csvFiles(answered).filter(({ name }) => name.startsWith("Answer"));
      const whole = csv?.text ?? "";
      const table = whole.slice(whole.indexOf("Key,"));
      const offers = async (bytes: Uint8Array, text: string) => {
        const again = await collect(bytes, [{ name: "mail.txt", bytes: new TextEncoder().encode(text) }]);
        const suppliers = again.proposals.flatMap(({ changes }) =>
          changes.filter(({ column, isName }) => isName && column === 0).map(({ value }) => value),
        );
        return {
          suppliers: [...new Set(suppliers)],
          doubts: again.proposals.flatMap(({ why }) => why).join(),
        };
      };
      expect((await offers(plan, whole)).suppliers).toEqual([RIVAL]);
      const lost = await offers(plan, table);
      expect(lost.doubts).toContain("whose offer it is, the answer does not say");
      const noted = await registered(plan, { to: `Steel supplier: ${RIVAL}`, copy: copy.number ?? "" });
      const known = await offers(noted ?? plan, table);
      expect(known.suppliers).toEqual([RIVAL]);
      expect(known.doubts).not.toContain("whose offer");
    },
    LONG,
  );
});
