import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Refusal } from "../../src/core/refusal";
import { evaluate } from "../../src/functions/evaluate";
import { BEST_OFFER } from "../../src/functions/stock";
import { readTable } from "../accuracy/checks";
import "../seed";
import { randomFrom } from "./brute-force";
import { cheapestSupply } from "./cheapest-supply";
import { ask, costUnder, drawn, NEED, OFFERS, type Row, type Tables, tablesOf, total } from "./small-orders";

const sentence = (rows: ReturnType<typeof ask>) => {
  const found = rows.flat().find((cell) => cell instanceof Refusal);
  return found instanceof Refusal ? found.message : undefined;
};

describe("BEST_OFFER against an exhaustive search that shares no code with it", () => {
  const cases = Array.from({ length: 200 }, (_, seed) => drawn(seed + 1));

  test("the costs of the published table are what the search finds today", () => {
    const { rows } = readTable("tests/accuracy/published/cheapest-orders.json");
    expect(rows.map(([seed]) => [seed, cheapestSupply(drawn(Number(seed)))])).toEqual(rows);
  });

  test("200 random small orders cost what the search finds, and are proved", () => {
    const compared = cases.map((order) => {
      const rows = ask(tablesOf(order), order.most, order.kerf, order.trim);
      const best = cheapestSupply(order);
      const left = rows.some(([, , supplier]) => supplier === "no offer");
      return {
        best,
        found: left ? Number.POSITIVE_INFINITY : (total(rows) ?? Number.POSITIVE_INFINITY),
        rows,
      };
    });
    const served = compared.filter(({ best }) => Number.isFinite(best));
    expect(served.length).toBeGreaterThan(120);
    for (const { best, found, rows } of served) {
      expect(found).toBeCloseTo(best, 6);
      expect(costUnder(rows, "lower bound")).toBeCloseTo(best, 6);
    }
    for (const { best, found } of compared.filter((each) => !Number.isFinite(each.best))) {
      expect(found instanceof Refusal ? Number.POSITIVE_INFINITY : found).toBe(best);
    }
  });
});

const orders = fc.integer({ min: 1000, max: 100_000 }).map((seed) => ({ ...drawn(seed), kerf: 0, trim: 0 }));
const cost = (tables: Tables, most: number | null = null) => {
  const found = total(ask(tables, most));
  return typeof found === "number" ? found : Number.POSITIVE_INFINITY;
};
/** Costs can be compared only where every item is served. */
const isWhole = (tables: Tables, most: number | null = null) =>
  !ask(tables, most).some(([, , supplier]) => supplier === "no offer") && Number.isFinite(cost(tables, most));

describe("BEST_OFFER, whatever the order", () => {
  test("an offer more never costs more", () => {
    fc.assert(
      fc.property(orders, fc.nat(), fc.integer({ min: 1, max: 40 }), (order, place, price) => {
        const tables = tablesOf(order);
        if (!isWhole(tables)) return;
        const more = tables.offers[place % tables.offers.length];
        const row = (more ?? []).map((cell, column) => (column === 3 ? price : column === 5 ? 900 : cell));
        expect(cost({ ...tables, offers: [...tables.offers, row] })).toBeLessThanOrEqual(cost(tables) + 1e-6);
      }),
      { numRuns: 60 },
    );
  });

  test("suppliers more allowed never cost more", () => {
    fc.assert(
      fc.property(orders, (order) => {
        const tables = tablesOf(order);
        const costs = [1, 2, 3, 4].map((most) =>
          isWhole(tables, most) ? cost(tables, most) : Number.POSITIVE_INFINITY,
        );
        for (let most = 1; most < costs.length; most += 1) {
          expect(costs[most]).toBeLessThanOrEqual((costs[most - 1] ?? 0) + 1e-6);
        }
      }),
      { numRuns: 60 },
    );
  });

  test("the order of rows and of columns changes neither cost nor suppliers", () => {
    fc.assert(
      fc.property(orders, fc.nat(), (order, seed) => {
        const { need, offers } = tablesOf(order);
        const random = randomFrom(seed);
        const mixed = <T>(rows: readonly T[]) =>
          rows
            .map((row) => [random(), row] as const)
            .sort(([a], [b]) => a - b)
            .map(([, row]) => row);
        const columns = mixed(OFFERS.map((_, column) => column));
        const turned = [OFFERS, ...mixed(offers)].map((row) => columns.map((column) => row[column] ?? null));
        const goods = (rows: ReturnType<typeof ask>) =>
          rows.map((row) => JSON.stringify(row.slice(0, 6))).sort();
        const asGiven = evaluate(BEST_OFFER, [[NEED, ...need], [OFFERS, ...offers], null, 0, 0]);
        const otherwise = evaluate(BEST_OFFER, [[NEED, ...mixed(need)], turned, null, 0, 0]);
        expect(goods(otherwise)).toEqual(goods(asGiven));
      }),
      { numRuns: 60 },
    );
  });

  test("the total is what its rows add up to, and no supplier alone is cheaper", () => {
    fc.assert(
      fc.property(orders, (order) => {
        const rows = ask(tablesOf(order));
        const at = rows.findIndex(([first]) => first === "total");
        if (at < 0) return;
        const parts = rows.slice(0, at).map((row) => (typeof row[5] === "number" ? row[5] : 0));
        expect(parts.reduce((sum, part) => sum + part, 0)).toBeCloseTo(total(rows) as number, 6);
        for (const row of rows.filter(([first]) => first === "all from one")) {
          if (typeof row[5] === "number")
            expect(row[5]).toBeGreaterThanOrEqual((total(rows) as number) - 1e-6);
        }
      }),
      { numRuns: 60 },
    );
  });
});

const one: Tables = {
  need: [["1075", "60 x 2.5", 611, 14]],
  offers: [["Alder", "1075", "60 x 2.5", 9, "kg", 3000, null, 60, 18]],
};

describe("BEST_OFFER reads tables as people write them", () => {
  test("prices a kg, a pound, a metre, a foot and a bar are one price", () => {
    // A bar of 60 × 2.5 × 3000 mm at 7.85 g/cm³ is 3.5325 kg; 1 lb is 0.45359237 kg, 1 ft 304.8 mm.
    const per: readonly [string, number][] = [
      ["kg", 40 / 3.5325],
      ["lb", (40 / 3.5325) * 0.45359237],
      ["m", 40 / 3],
      ["ft", (40 / 3) * 0.3048],
      ["bar", 40],
    ];
    for (const [unit, price] of per) {
      const offers = [["Alder", "1075", "60 x 2.5", price, unit, 3000, null, 0, 0]];
      expect(total(ask({ ...one, offers }, null, 1.2, 10)), unit).toBeCloseTo(160, 3);
    }
  });

  test("sections in inches, turned round, or by width and thickness are one section", () => {
    const need = [
      ["steel", "width", "thickness mm", "length", "quantity"],
      ["1075", "2 in", 6.35, 300, 2],
    ];
    for (const section of ["2 x 1/4 in", '1/4" x 2"', "50.8 × 6,35 mm", "6.35x50.8"]) {
      const offers = [OFFERS, ["Alder", "1075", section, 20, "bar", 1000, null, null, null]];
      expect(total(evaluate(BEST_OFFER, [need, offers])), section).toBe(20);
    }
  });

  test("bars in the rack are used first, and several lengths in a cell are several", () => {
    // 14 of 611 mm, 4 a bar of 3000: two bars in the rack (7.1 kg) hold 8, the six others need one bar of 6000 less 10.
    const need = [
      [...NEED, "kg in stock", "bar length"],
      ["1075", "60 x 2.5", 611, 14, 7.1, 3000],
    ];
    const offers = [OFFERS, ["Alder", "1075", "60 x 2.5", 10, "m", "3000; 6000", null, null, null]];
    const [goods] = evaluate(BEST_OFFER, [need, offers]);
    const [, , supplier, , , cost] = goods ?? [];
    expect([supplier, cost]).toEqual(["Alder", 60]);
    expect(total(evaluate(BEST_OFFER, [need, offers]))).toBe(60);
    const enough = [need[0], ["1075", "60 x 2.5", 611, 8, 7.1, 3000]];
    expect(evaluate(BEST_OFFER, [enough, offers])[0]?.slice(2, 6)).toEqual(["in stock", 0, "", 0]);
  });

  test("a mass is bought by the bar, or as weighed where no bar length is given", () => {
    const need = [
      ["steel", "section", "kg"],
      ["1075", "60 x 2.5", 10],
    ];
    // 10 kg are three bars of 3.5325 kg.
    const byBar = [OFFERS, ["Alder", "1075", "60 x 2.5", 9, "kg", 3000, null, null, null]];
    expect(total(evaluate(BEST_OFFER, [need, byBar]))).toBeCloseTo(3 * 3.5325 * 9, 3);
    const weighed = [OFFERS, ["Alder", "1075", "60 x 2.5", 9, "kg", null, null, null, null]];
    expect(total(evaluate(BEST_OFFER, [need, weighed]))).toBeCloseTo(90, 6);
  });
});

describe("BEST_OFFER says what is wrong in one cell and answers for the rest", () => {
  const offer = (change: Record<number, string | number | null>): Row =>
    (one.offers[0] ?? []).map((cell, column) => (column in change ? (change[column] ?? null) : cell));
  const faults: readonly [string, Record<number, string | number | null>, RegExp][] = [
    ["a steel that does not exist", { 1: "1O75X" }, /1O75X/],
    ["a section that is none", { 2: "sixty" }, /section "sixty" given/],
    ["a price with a currency word", { 3: "9 EUR" }, /price: .*EUR/],
    ["a price per a unit unknown", { 4: "ton" }, /per "ton" given; give "kg"/],
    ["no price", { 3: null }, /price/],
    ["a bar of minus 3 m", { 5: -3000 }, /bar length -3000 given/],
    ["a price a bar without a bar", { 4: "bar", 5: null }, /one bar length/],
  ];

  test.each(faults)("%s", (_, change, said) => {
    const rows = ask(
      { ...one, offers: [...one.offers, ["Birch", ...offer(change).slice(1)]] },
      null,
      1.2,
      10,
    );
    const at = rows.findIndex(([first]) => first === "left out");
    expect(rows[at]?.[1]).toBe("row 2 of the offers");
    expect(sentence(rows)).toMatch(said);
    expect((sentence(rows) ?? "").split(/\s+/).length).toBeLessThanOrEqual(40);
    // Four bars of 3.5325 kg at 9.00 and 18 freight.
    expect(total(rows)).toBeCloseTo(4 * 3.5325 * 9 + 18, 3);
  });

  test("what nobody offers is told in its row and is in no total", () => {
    const need: Row[] = [...one.need, ["52100", "50 x 3", 346, 28]];
    const rows = ask({ ...one, need }, null, 1.2, 10);
    expect(rows[1]?.slice(0, 3)).toEqual(["52100", "50 × 3 mm", "no offer"]);
    expect(sentence(rows)).toBe("52100 50 × 3 mm: nobody offers it; it is not in the total");
    expect(total(rows)).toBeCloseTo(4 * 3.5325 * 9 + 18, 3);
  });

  test("too few suppliers allowed, figures that disagree, pieces longer than the bars", () => {
    const need: Row[] = [...one.need, ["52100", "50 x 3", 346, 28]];
    const offers: Row[] = [...one.offers, ["Birch", "52100", "50 x 3", 9, "kg", 3000, null, null, null]];
    expect(sentence(ask({ need, offers }, 1))).toBe(
      "no single supplier offers everything: at least 2 are needed; allow more suppliers",
    );
    expect(sentence(ask({ need, offers: [...offers, offer({ 7: 80 })] }))).toBe(
      "Alder: minimum charge is given as 60 and 80; give it once",
    );
    expect(sentence(ask({ ...one, need: [["1075", "60 x 2.5", 3611, 1]] }))).toMatch(/longer than the bar/);
  });
});

test("BEST_OFFER remarks on a heading that is nearly a known one", () => {
  const offers = [
    ["supplier", "steel", "section", "price", "per", "bar length", "frieght"],
    ["Alder", "1075", "60 x 2.5", 9, "kg", 3000, 18],
  ];
  const rows = evaluate(BEST_OFFER, [[NEED, ...one.need], offers]);
  expect(rows.at(-1)?.slice(0, 2)).toEqual([
    "remark",
    'The heading "frieght" is not known and counts for nothing; was "freight" meant?',
  ]);
});
