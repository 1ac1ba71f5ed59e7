import {
  cell,
  column,
  conserved,
  type Draw,
  figure,
  figures,
  grows,
  invariant,
  inverse,
  monotone,
  number,
  rising,
  rows,
  sum,
  times,
} from "./mechanism";

const share = (draw: Draw) => draw.figure(0.6, 0.98, 0.01);
const good = (draw: Draw) => draw.figure(1, 80, 1);
const summed = (name: string, asked: Record<string, unknown>, at: number) =>
  sum(rows(name, asked).map((row) => number(row[at])));

const breaks = (draw: Draw) => ({
  ...{
    setUp: draw.figure(50, 400),
    hoursFirst: draw.figure(1, 8),
    rate: draw.figure(0.8, 1, 0.01),
    model: "unit",
  },
  ...{ hourRate: draw.figure(20, 80), material: draw.figure(5, 40), step: 0.01 },
});

const range = (draw: Draw) => ({
  ...{ good: draw.figure(2, 30, 1), yieldLow: 0.7, yieldLikely: 0.85, yieldHigh: 0.95 },
  ...{ hoursLow: 2, hoursLikely: draw.figure(2, 4), hoursHigh: 5, hourRate: draw.figure(20, 60) },
  ...{ materialLow: 10, materialLikely: draw.figure(10, 20), materialHigh: 25 },
});

const pieces = (draw: Draw) => [draw.figure(100, 400, 1), draw.figure(100, 400, 1), draw.figure(100, 400, 1)];
const bars = (asked: Record<string, unknown>) =>
  number(rows("CUT_PLAN", asked).find(([what]) => what === "bars")?.[1]);

const NEED = [
  ["steel", "section", "length", "quantity"],
  ["1084", "50 x 3", 300, 12],
];
const HEADINGS = ["supplier", "steel", "section", "price", "per", "bar length"];
const offers = (draw: Draw) =>
  ["A", "B", "C"].map((name) => [
    name,
    "1084",
    "50 x 3",
    draw.figure(6, 12, 0.01),
    "kg",
    draw.oneOf([2000, 3000]),
  ]);
const best = (list: readonly unknown[]) =>
  number(
    rows("BEST_OFFER", { need: NEED, offers: [HEADINGS, ...list] }).find(([what]) => what === "total")?.[5],
  );

const LINES = ["line", "steel", "good", "yield", "length", "width", "thickness"];
const lines = (draw: Draw) =>
  ["L1", "L2", "L3"].map((name) => [
    name,
    draw.plain(),
    good(draw),
    share(draw),
    draw.figure(100, 400, 1),
    35,
    4,
  ]);
const planned = (table: readonly unknown[]) => rows("RUN_PLAN", { lines: [LINES, ...table] }).slice(1);

/** Stock, runs, money and inspection. */
export const RUN_RELATIONS = [
  conserved("CUT_PLAN cuts every piece", "CUT_PLAN", (draw) => {
    const [length, quantity] = [pieces(draw), [4, 7, 3]];
    const plan = rows("CUT_PLAN", { length: column(length), quantity: column(quantity), barLength: 3000 });
    const cut = plan.filter(([what]) => typeof what === "string" && what.includes("×"));
    return [
      sum(cut.map((row) => times(number(row[1]), number(row[2]) ?? Number.NaN))),
      cut.length === 0 ? undefined : 14,
    ];
  }),
  invariant("CUT_PLAN does not ask which piece comes first", "CUT_PLAN", (draw) => {
    const [length, asked] = [pieces(draw), { quantity: 5, barLength: 2000 }];
    return [
      bars({ ...asked, length: column(length) }),
      bars({ ...asked, length: column([...length].reverse()) }),
    ];
  }),
  monotone("CUT_PLAN needs no fewer bars with a wider kerf", "CUT_PLAN", (draw) => {
    const asked = { length: column(pieces(draw)), quantity: 9, barLength: 2000 };
    return rising(draw, 1, 6).map((kerf) => bars({ ...asked, kerf }));
  }),
  monotone("CUT_PLAN needs no fewer bars for more pieces", "CUT_PLAN", (draw) => {
    const asked = { length: column(pieces(draw)), barLength: 2000 };
    return [3, 7, 20].map((quantity) => bars({ ...asked, quantity }));
  }),
  invariant("CUT_PLAN in inches is CUT_PLAN in mm", "CUT_PLAN", (draw) => {
    const inches = draw.figure(4, 14, 0.5);
    const of = (length: unknown) => bars({ length, quantity: 20, barLength: 3000 });
    return [of(`${inches} in`), of(inches * 25.4)];
  }),
  invariant("FORGE_LENGTH goes with the volume", "FORGE_LENGTH", (draw) => {
    const [volume, asked] = [draw.figure(20_000, 90_000), { barWidth: 40, barThickness: 6 }];
    return [
      figure("FORGE_LENGTH", { ...asked, volume: 2 * volume }),
      times(figure("FORGE_LENGTH", { ...asked, volume }), 2),
    ];
  }),
  grows("FORGE_LENGTH", "scale", (draw) => ({
    volume: draw.figure(20_000, 90_000),
    barWidth: 40,
    barThickness: 6,
    values: rising(draw, 0, 0.2),
  })),
  inverse("LENGTH reads what FRACTION writes, to half a 64th", "LENGTH FRACTION", (draw) => {
    const length = draw.figure(10, 900);
    return [length, figure("LENGTH", { length: `${cell("FRACTION", { length })} in` }), 25.4 / 128 + 1e-6];
  }),
  invariant("LENGTH reads inches, feet and centimetres alike", "LENGTH", (draw) => {
    const feet = draw.figure(1, 9, 1);
    const read = (length: string) => figure("LENGTH", { length });
    return [read(`${feet} ft`), read(`${12 * feet} in`), 1e-6];
  }),
  invariant("STEEL_ORDER does not ask which line comes first", "STEEL_ORDER", (draw) => {
    const [length, asked] = [
      pieces(draw),
      { steel: "1084", width: 50, thickness: 3, quantity: 4, barLength: 3000 },
    ];
    const kilograms = (list: readonly number[]) =>
      summed("STEEL_ORDER", { ...asked, length: column(list) }, 3);
    return [kilograms(length), kilograms([...length].reverse())];
  }),
  invariant("BEST_OFFER does not ask which offer comes first", "BEST_OFFER", (draw) => {
    const list = offers(draw);
    return [best(list), best([...list].reverse())];
  }),
  monotone("BEST_OFFER is no dearer with one offer more", "BEST_OFFER", (draw) => {
    const list = offers(draw);
    return [best(list), best(list.slice(0, 2)), best(list.slice(0, 1))];
  }),
  monotone(
    "OFFERS_COMPARED: no supplier delivers for less than BEST_OFFER finds",
    "OFFERS_COMPARED BEST_OFFER",
    (draw) => {
      const list = offers(draw);
      const whole = rows("OFFERS_COMPARED", { need: NEED, offers: [HEADINGS, ...list] }).find(
        ([what]) => what === "whole order",
      );
      const found =
        whole
          ?.slice(3)
          .map(number)
          .filter((one) => one !== undefined) ?? [];
      return [best(list), found.length === 0 ? undefined : Math.min(...found)];
    },
    0.01,
  ),

  grows("STARTS", "good", (draw) => ({ yield: share(draw), values: rising(draw, 1, 200, 1) })),
  grows("STARTS", "yield", (draw) => ({ good: good(draw), values: rising(draw, 0.5, 0.99) }), {
    falls: true,
  }),
  grows("STARTS", "confidence", (draw) => ({
    good: good(draw),
    yield: share(draw),
    values: rising(draw, 0.5, 0.99),
  })),
  inverse(
    "CHANCE_OF_ENOUGH of STARTS reaches the confidence, of one less does not",
    "STARTS CHANCE_OF_ENOUGH",
    (draw) => {
      const [asked, confidence] = [{ good: good(draw), yield: share(draw) }, draw.figure(0.6, 0.98)];
      const starts = figure("STARTS", { ...asked, confidence });
      const chance = (n: number) =>
        n < asked.good ? 0 : (figure("CHANCE_OF_ENOUGH", { ...asked, starts: n }) ?? Number.NaN);
      return [
        true,
        starts === undefined
          ? undefined
          : chance(starts) >= confidence - 1e-9 && chance(starts - 1) < confidence,
      ];
    },
  ),
  grows("CHANCE_OF_ENOUGH", "starts", (draw) => ({
    good: 10,
    yield: share(draw),
    values: rising(draw, 10, 30, 1),
  })),
  grows("CHANCE_OF_ENOUGH", "yield", (draw) => ({
    starts: 24,
    good: draw.figure(10, 22, 1),
    values: rising(draw, 0.5, 0.99),
  })),
  monotone("YIELD_FLOOR lies under the share that was good", "YIELD_FLOOR", (draw) => {
    const tried = draw.figure(10, 90, 1);
    const counted = draw.figure(5, tried, 1);
    return [figure("YIELD_FLOOR", { good: counted, tried }), counted / tried];
  }),
  grows(
    "YIELD_FLOOR",
    "confidence",
    (draw) => ({ good: draw.figure(10, 20, 1), tried: 22, values: rising(draw, 0.5, 0.99) }),
    { falls: true },
  ),
  monotone("STARTS_BY_PROFIT begins no fewer blades for a better price", "STARTS_BY_PROFIT", (draw) => {
    const asked = { good: good(draw), yield: share(draw), cost: 50 };
    return rising(draw, 60, 400).map((price) => figure("STARTS_BY_PROFIT", { ...asked, price }));
  }),
  grows("FURNACE", "temperature", (draw) => ({ load: draw.figure(1, 20), values: rising(draw, 200, 1100) })),
  invariant("FURNACE goes with the load", "FURNACE", (draw) => {
    const [load, temperature] = [draw.figure(1, 20), draw.figure(200, 1000)];
    return [
      figure("FURNACE", { load: 2 * load, temperature }),
      times(figure("FURNACE", { load, temperature }), 2),
    ];
  }),
  conserved("HEAT_CONTENT adds up over a temperature between", "HEAT_CONTENT", (draw) => {
    const [from = 0, middle = 0, to = 0] = rising(draw, 20, 1100);
    const heat = (low: number, high: number) => figure("HEAT_CONTENT", { from: low, to: high });
    return [heat(from, to), sum([heat(from, middle), heat(middle, to)]), 0.01];
  }),
  inverse("OIL_RISE of the litres of OIL_LITRES", "OIL_RISE OIL_LITRES", (draw) => {
    const [asked, rise] = [{ mass: draw.figure(0.5, 5), from: 820, to: 60 }, draw.figure(5, 30)];
    const litres = figure("OIL_LITRES", { ...asked, rise });
    return [rise, litres === undefined ? undefined : figure("OIL_RISE", { ...asked, litres }), 0.05];
  }),
  grows(
    "OIL_RISE",
    "litres",
    (draw) => ({ mass: draw.figure(0.5, 4), from: 820, to: 80, values: rising(draw, 10, 100) }),
    { falls: true },
  ),
  grows(
    "LEARNING",
    "n",
    (draw) => ({
      first: draw.figure(1, 10),
      rate: draw.figure(0.7, 1),
      model: "unit",
      values: rising(draw, 1, 200, 1),
    }),
    { falls: true },
  ),
  conserved("LEARNING: the hours of the first four add up to their total", "LEARNING", (draw) => {
    const asked = {
      first: draw.figure(1, 10),
      rate: draw.figure(0.7, 1),
      model: draw.oneOf(["unit", "cumulative"]),
    };
    return [
      sum([1, 2, 3, 4].map((n) => figure("LEARNING", { ...asked, n }))),
      figure("LEARNING", { ...asked, n: 4, what: "total" }),
      1e-6,
    ];
  }),
  conserved("LOADS keeps every piece", "LOADS", (draw) => {
    const count = [draw.figure(1, 40, 1), draw.figure(1, 40, 1)];
    return [
      summed(
        "LOADS",
        { recipe: column(["oil", "water"]), count: column(count), mass: 0.4, piecesALoad: 7 },
        2,
      ),
      (count[0] ?? 0) + (count[1] ?? 0),
    ];
  }),
  conserved("LOADS keeps every kilogram", "LOADS", (draw) => {
    const [count, mass] = [draw.figure(1, 60, 1), draw.figure(0.1, 2, 0.1)];
    return [summed("LOADS", { recipe: "oil", count, mass, massALoad: 5 }, 3), count * mass, 1e-6];
  }),
  invariant("RUN_PLAN plans a line alike in whatever place it stands", "RUN_PLAN", (draw) => {
    const table = lines(draw);
    const of = (all: readonly unknown[]) =>
      planned(all)
        .map((row) => [row[0], row[6], row[9]].join(" "))
        .sort();
    return [of(table), of([...table].reverse())];
  }),
  invariant("RUN_PLAN has the starts of STARTS", "RUN_PLAN STARTS", (draw) => {
    const table = lines(draw);
    const [, , wanted, yieldShare] = table[0] ?? [];
    return [number(planned(table)[0]?.[9]), figure("STARTS", { good: wanted, yield: yieldShare })];
  }),
  conserved("RUN_TOTALS counts the starts of RUN_PLAN", "RUN_TOTALS RUN_PLAN", (draw) => {
    const table = lines(draw);
    const total = rows("RUN_TOTALS", { lines: [LINES, ...table] }).find(([what]) => what === "starts")?.[1];
    return [number(total), sum(planned(table).map((row) => number(row[9])))];
  }),
  conserved("HISTORY: two lots of an item are one of both", "HISTORY", (draw) => {
    const [first, second] = [draw.figure(5, 30, 1), draw.figure(5, 30, 1)];
    const of = (table: readonly unknown[][]) =>
      figures("HISTORY", { lines: [["item", "started", "good"], ...table] }).slice(2, 6);
    return [
      of([
        ["a", first, first - 1],
        ["a", second, second - 2],
      ]),
      of([["a", first + second, first + second - 3]]),
    ];
  }),
  invariant("LOT_COST goes with the currency", "LOT_COST", (draw) => {
    const money = [draw.figure(10, 90), draw.figure(20, 60), draw.figure(1, 9), draw.figure(0, 50)];
    const of = (factor: number) => {
      const [setUp, hourRate, material, outside] = money.map((one) => one * factor);
      return figure("LOT_COST", { setUp, hourRate, material, outside, runHours: 12, quantity: 10 });
    };
    return [of(10), times(of(1), 10), 1e-6];
  }),
  inverse("PRICE_AT_MARGIN: what is left of the price is the margin", "PRICE_AT_MARGIN", (draw) => {
    const [cost, margin] = [draw.figure(10, 500), draw.figure(0.05, 0.8)];
    const price = figure("PRICE_AT_MARGIN", { cost, margin });
    return [margin, price === undefined ? undefined : 1 - cost / price, 1e-9];
  }),
  invariant(
    "PRICE_AT_MARKUP of m is PRICE_AT_MARGIN of m / (1 + m)",
    "PRICE_AT_MARKUP PRICE_AT_MARGIN",
    (draw) => {
      const [cost, markup] = [draw.figure(10, 500), draw.figure(0.05, 2)];
      return [
        figure("PRICE_AT_MARKUP", { cost, markup }),
        figure("PRICE_AT_MARGIN", { cost, margin: markup / (1 + markup) }),
        1e-9,
      ];
    },
  ),
  grows("PRICE_AT_MARGIN", "margin", (draw) => ({
    cost: draw.figure(10, 500),
    values: rising(draw, 0, 0.9),
  })),
  monotone("OUTSIDE_CHARGE is never under its minimum", "OUTSIDE_CHARGE", (draw) => {
    const minimum = draw.figure(20, 200);
    return [
      minimum,
      figure("OUTSIDE_CHARGE", { quantity: draw.figure(1, 50, 1), rate: draw.figure(1, 9), minimum }),
    ];
  }),
  grows("OUTSIDE_CHARGE", "quantity", (draw) => ({
    rate: draw.figure(1, 9),
    minimum: 50,
    values: rising(draw, 1, 90, 1),
  })),
  invariant("ROUND_MONEY of what is rounded is the same", "ROUND_MONEY", (draw) => {
    const step = draw.oneOf([0.01, 0.05, 1, 5]);
    const value = figure("ROUND_MONEY", { value: draw.figure(1, 900), step });
    return [value, figure("ROUND_MONEY", { value, step })];
  }),
  invariant("ROUND_MONEY moves by half a step at most", "ROUND_MONEY", (draw) => {
    const [value, step] = [draw.figure(1, 900), draw.oneOf([0.01, 0.05, 1, 5])];
    return [value, figure("ROUND_MONEY", { value, step }), step / 2 + 1e-9];
  }),
  monotone(
    "COST_RANGE: best, low, likely, high, worst",
    "COST_RANGE",
    (draw) => {
      const [low, likely, high, bestCase, worst] = figures("COST_RANGE", range(draw));
      return [bestCase, low, likely, high, worst];
    },
    0.01,
  ),
  monotone(
    "COST_RANGE rises with the rate of an hour",
    "COST_RANGE",
    (draw) => {
      const asked = range(draw);
      return rising(draw, 20, 90).map((hourRate) => figure("COST_RANGE", { ...asked, hourRate }, 1));
    },
    0.01,
  ),
  monotone("PRICE_BREAKS: a larger lot has no dearer blade", "PRICE_BREAKS", (draw) => {
    const asked = breaks(draw);
    return [50, 10, 2].map((quantity) => figure("PRICE_BREAKS", { ...asked, quantity }, 5));
  }),
  invariant("PRICE_BREAKS: the lot is its blades", "PRICE_BREAKS", (draw) => {
    const [quantity, , , , lot, unit] = figures("PRICE_BREAKS", {
      ...breaks(draw),
      quantity: draw.figure(1, 60, 1),
    });
    return [lot, times(unit, quantity ?? Number.NaN), 0.01];
  }),

  grows(
    "ACCEPT_CHANCE",
    "fraction",
    (draw) => ({ sample: draw.figure(5, 50, 1), accept: 1, values: rising(draw, 0.001, 0.4) }),
    { falls: true },
  ),
  grows("ACCEPT_CHANCE", "accept", (draw) => ({
    sample: 32,
    fraction: draw.figure(0.01, 0.3),
    values: rising(draw, 0, 8, 1),
  })),
  grows(
    "ACCEPT_CHANCE",
    "sample",
    (draw) => ({ accept: 1, fraction: draw.figure(0.01, 0.3), values: rising(draw, 2, 90, 1) }),
    { falls: true },
  ),
  invariant("READINGS does not ask which reading came first", "READINGS", (draw) => {
    const readings = [0, 1, 2, 3].map(() => draw.figure(56, 61, 0.1));
    const of = (list: readonly number[]) =>
      figures("READINGS", { readings: column(list), low: 57, high: 60 }).slice(0, 5);
    return [of(readings), of([...readings].reverse()), 1e-9];
  }),
  invariant("READINGS a whole HRC higher: the mean moves by one, the range does not", "READINGS", (draw) => {
    const readings = [0, 1, 2].map(() => draw.figure(56, 61, 0.1));
    const [, mean, spread] = figures("READINGS", { readings: column(readings) });
    const [, mean1, spread1] = figures("READINGS", { readings: column(readings.map((one) => one + 1)) });
    return [[mean1, spread1], [sum([mean, 1]), spread], 1e-6];
  }),
  invariant("SAMPLE_PLAN rejects one more than it accepts", "SAMPLE_PLAN", (draw) => {
    const [, , accept, reject] = figures("SAMPLE_PLAN", {
      lot: draw.figure(5, 3000, 1),
      aql: draw.oneOf([0.65, 1, 2.5, 4]),
    });
    return [reject, sum([accept, 1])];
  }),
  grows(
    "SAMPLE_PLAN",
    "lot",
    (draw) => ({ aql: draw.oneOf([1, 2.5, 4]), values: rising(draw, 2, 1200, 1) }),
    { column: 1 },
  ),
  invariant("RUN_HEADINGS: RUN_PLAN takes every heading that is listed", "RUN_HEADINGS RUN_PLAN", (draw) => {
    const heading = draw.oneOf(rows("RUN_HEADINGS", {}))[0];
    const table = [
      ["steel", "good", heading === "steel" || heading === "good" ? "yield" : heading],
      ["1084", 5, null],
    ];
    const cautions = rows("RUN_PLAN", { lines: table }).flat().join(" ");
    return [cautions.includes("is not known and counts for nothing"), false];
  }),
];
