import { strFromU8, unzipSync } from "fflate";
import { beforeAll, describe, expect, it } from "vitest";
import { recalculate } from "../../src/workbook/file/patch/recalculate";
import { shareCopy } from "../../src/workbook/share/share-copy";
import { shareQuestion } from "../../src/workbook/share/share-question";
import { planningFile } from "../../src/workbook/sheets/planning-file";
import { planningTemplate } from "../../src/workbook/sheets/planning-template";
import { SHEETS_OF_THE_PLAN } from "../../src/workbook/sheets/sheets-of-the-plan";
import { type DataRow, exampleData } from "../../src/workbook/sheets/template-data";
import { type StoredValues, storedValues } from "./template-cells";

const LONG = 240_000;
const MARKER = "ZQ-PRIVATE-7731";
const MARKS = [MARKER, "97731.25", "87731.5"];

/** Everybody that copies of R-07 go to, and a supplier whom the plan does not buy from. */
const NAMED = [
  ["supplier", "Brackwater Steel Yard"],
  ["supplier", "Old Quay Metals"],
  ["supplier", "Grey Heron Steel"],
  ["heat-treater", "Salt Lane Heat Treatment"],
  ["customer", "Marrow & Kettle Provisions"],
  ["customer", "Low Meadow Guild"],
] as const;

let bytes: Uint8Array;
let values: StoredValues;

beforeAll(async () => {
  const data = exampleData();
  // A third supplier, too dear to be taken, whose words and figures would be known again.
  const dear = [`${MARKER} Ltd`, "52100", 50, 3, 97731.25, "kg", "3000", null, 0, 87731.5, "2026-W39"];
  const offers = [...data.offers, [...dear, `${MARKER} heat`, `${MARKER} remark`]];
  bytes = await planningFile(planningTemplate({ ...data, offers }));
  values = await storedValues(bytes);
}, LONG);

const rowsOf = (first: string) => values.rows("Best offer").filter(([cell]) => cell === first);

describe("offers of run R-07", () => {
  it("come to the cheapest mix of two suppliers, by hand", () => {
    // Bars of the cut list: L1 4 of 50 × 3 × 3000 (3.5145 kg at 7.81), L5 10 of 743.6 mm, 8 a bar of 6000: 2 bars.
    const mix = (steel: string) => rowsOf(steel)[0]?.slice(0, 6);
    expect(mix("52100")?.slice(2, 5)).toEqual(["Brackwater Steel Yard", 4, 3000]);
    expect(mix("52100")?.[5]).toBeCloseTo(4 * 0.05 * 0.003 * 3 * 7810 * 8.4, 6);
    expect(mix("51CrV4")?.slice(2, 5)).toEqual(["Old Quay Metals", 2, 6000]);
    expect(mix("51CrV4")?.[5]).toBeCloseTo(2 * 0.03 * 0.008 * 6 * 7850 * 5.4, 6);
    expect(mix("5160")?.[2]).toBe("in stock");
    const [total] = rowsOf("total");
    const parts = values.rows("Best offer").slice(7, 16);
    const sum = parts.reduce((all, row) => all + (typeof row[5] === "number" ? row[5] : 0), 0);
    expect(total?.[5]).toBeCloseTo(sum, 6);
    expect(rowsOf("lower bound")[0]?.[1]).toBe("no mix costs less");
  });

  it("stand side by side, and each says whether it is taken", () => {
    const [head] = rowsOf("steel");
    expect(head?.slice(3, 5)).toEqual(["Brackwater Steel Yard", "Old Quay Metals"]);
    const [, side] = rowsOf("52100");
    expect(side?.[4]).toBe(4 * 33);
    expect(rowsOf("freight").at(-1)?.slice(3, 5)).toEqual([24, 18]);
    const offers = values.rows("Offers").slice(4, 13);
    expect(offers.map((row) => row[15])).toEqual(["yes", "yes", "yes", "yes", "no", "no", "no", "yes", "no"]);
    // 33 a bar of 3.5145 kg.
    expect(offers[4]?.[13]).toBeCloseTo(33 / 3.5145, 6);
  });
});

describe("the sheet Best offer", () => {
  const best = () => planningTemplate(exampleData()).sheets.find(({ name }) => name === "Best offer");

  it("asks each function once for all cells, and once more for the sentence of a refusal", () => {
    for (const name of ["BEST_OFFER", "OFFERS_COMPARED"]) {
      const asking = (best()?.rows ?? []).flatMap((cells) =>
        cells.flatMap((cell, column) =>
          String(cell?.content ?? "").includes(`BLADE.${name}(`) ? [{ column, content: cell?.content }] : [],
        ),
      );
      const hidden = asking.filter(({ column }) => best()?.hiddenColumns?.includes(column));
      expect(hidden).toHaveLength(1);
      expect(asking).toHaveLength(2);
      const [first] = asking.filter((cell) => !hidden.includes(cell));
      expect(first?.content).toMatch(/^=IF\(\$[A-Z]+\$\d+="–",/);
    }
  });

  it("prints the columns in sight alone", () => {
    const sheet = best();
    const lastColumn = sheet?.print?.area?.lastColumn ?? -1;
    expect(sheet?.hiddenColumns?.[0]).toBe(lastColumn + 1);
    expect(Math.max(...(sheet?.rows ?? []).map((cells) => cells.length))).toBeLessThanOrEqual(
      lastColumn + 1 + (sheet?.hiddenColumns?.length ?? 0),
    );
  });

  it(
    "is empty until a price is typed, and tells a refusal in the first cell of each table",
    async () => {
      const offer = ["Old Quay Metals", "52100", 50, 3, null, "kg", "3000"] as const;
      const shown = async (row: DataRow) => {
        const file = await planningFile(planningTemplate({ ...exampleData(), offers: [row] }));
        const { errors } = await recalculate(file);
        const rows = (await storedValues(file)).rows("Best offer").map((cells) => cells.slice(0, 9));
        const at = rows.findIndex(([cell]) => cell === "Steel") + 1;
        return { errors: errors.map(({ cell }) => cell), rows: rows.slice(at, at + 3) };
      };
      const none = await shown([...offer]);
      expect(none.errors).toEqual([]);
      expect(none.rows.flat().every((cell) => cell === undefined || cell === "")).toBe(true);
      const refused = await shown([...offer].map((cell, at) => (at === 1 ? "nonsuch" : (cell ?? 8))));
      expect(refused.errors).toHaveLength(2);
      expect(refused.rows[0]).toEqual(["#N/A", "–", "–", "–", "–", "–", "–", "–", undefined]);
      expect(refused.rows[1]?.slice(0, 8)).toEqual(Array(8).fill("–"));
    },
    LONG,
  );
});

describe("what suppliers ask stays in the workbook", () => {
  const texts = (copy: Uint8Array) =>
    Object.values(unzipSync(copy))
      .map((part) => strFromU8(part, true))
      .join("\n");

  it(
    "in every copy, for everyone and of everything",
    async () => {
      const whole = texts(bytes);
      for (const mark of MARKS) expect(whole).toContain(mark);
      const choices = [
        { kind: "all" } as const,
        ...["supplier", "heat-treater", "customer"].map((whom) => ({ kind: "for", whom }) as const),
        ...NAMED.map(([whom, name]) => ({ kind: "for", whom, name }) as const),
        { kind: "for", whom: "supplier", name: "Old Quay Metals", enquiry: ["L1"] } as const,
      ];
      for (const choice of choices) {
        const copy = await shareCopy(bytes, { choice });
        const words = texts(copy.bytes);
        const found = [...MARKS, 'sheet name="Offers"', 'sheet name="Best offer"'].filter((mark) =>
          words.includes(mark),
        );
        expect(found, JSON.stringify(choice)).toEqual([]);
      }
    },
    LONG,
  );

  it("is not offered to be shared, and named it is refused with a sentence", async () => {
    const hidden = {
      Offers: "what suppliers ask",
      "Best offer": "what suppliers ask",
      Register: "what was sent to whom",
    };
    const told = SHEETS_OF_THE_PLAN.filter(({ holds }) => holds !== undefined).map(({ name }) => name);
    expect(told).toEqual(expect.arrayContaining(Object.keys(hidden)));
    const { sheets } = shareQuestion(bytes, "plan.xlsx");
    for (const [name, held] of Object.entries(hidden)) {
      expect(sheets).not.toContain(name);
      await expect(shareCopy(bytes, { choice: { kind: "sheets", names: [name] } })).rejects.toThrow(
        `The sheet "${name}" holds ${held} and stays in the workbook.`,
      );
    }
  });
});
