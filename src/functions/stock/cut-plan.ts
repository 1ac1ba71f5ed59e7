import type { BarOffer, PieceLine } from "../../core/stock/cut-order";
import { CUTTING_PLAN, type CutPlan, cutPlanInParts } from "../../core/stock/cut-plan";
import { patternText, piecesABar, verdict, wastePercent } from "../../core/stock/cut-summary";
import { type Answer, tableFunction } from "../declare";
import { besideRow, type Column, filled, isEmptyColumn } from "../lists";
import { numberOrNothing, rangeParameter } from "../parameters";
import { barLengths, kerf, pieceLengths, quantities, trim } from "./arguments";

function linesOf(lengths: Column<number>, counts: Column<number>): PieceLine[] {
  return lengths.flatMap((length, row) => {
    const quantity = besideRow(counts, row, lengths.length, "quantity");
    if (length === undefined && (quantity === undefined || quantity === 0 || counts.length === 1)) return [];
    return [{ length: filled(length, row, "length"), quantity: filled(quantity, row, "quantity") }];
  });
}

function offersOf(lengths: Column<number>, prices: Column<number>, stocks: Column<number>): BarOffer[] {
  const rows = lengths.length;
  return lengths.flatMap((length, row) => {
    if (length === undefined) return [];
    const price = isEmptyColumn(prices) ? undefined : besideRow(prices, row, rows, "bar price");
    const inStock = isEmptyColumn(stocks) ? undefined : besideRow(stocks, row, rows, "bars in stock");
    return [{ length, price, inStock }];
  });
}

function tableOf(plan: CutPlan, keepFrom: number | undefined): Answer[][] {
  const patterns = plan.rows.map((row): Answer[] => {
    return [patternText(row, keepFrom), row.bars, piecesABar(row), row.drop, row.barLength];
  });
  const cost = plan.cost === undefined ? [] : [["cost", plan.cost, "", "", ""]];
  return [
    ...patterns,
    ["bars", plan.bars, "", "", ""],
    ["lower bound", plan.bound, verdict(plan), "", ""],
    ["waste %", wastePercent(plan, keepFrom), "", "", ""],
    ...cost,
  ];
}

export const CUT_PLAN = tableFunction({
  name: "CUT_PLAN",
  takesLong: true,
  summary:
    "How to cut an order from bars: a row a pattern, then bars, lower bound and waste; fewest bars or, with prices, least cost.",
  parameters: {
    length: pieceLengths,
    quantity: quantities,
    barLength: barLengths,
    kerf,
    trim,
    barPrice: rangeParameter(
      numberOrNothing({
        label: "bar price",
        quantity: "money",
        unit: "",
        min: 0.0001,
        max: 1e9,
        help: "Price of a bar of each length; the plan then costs least, and the bound is a cost.",
      }),
    ),
    barsInStock: rangeParameter(
      numberOrNothing({
        label: "bars in stock",
        quantity: "count",
        unit: "",
        min: 1,
        max: 1e6,
        whole: true,
        help: "Bars of each length to be had; empty or 0 where as many as needed can be bought: leave a length out of the list that cannot be had.",
      }),
    ),
    keepFrom: numberOrNothing({
      label: "keep off-cut",
      quantity: "length",
      unit: "mm",
      min: 0.1,
      max: 30_000,
      help: "Off-cuts of this length and over, in mm, are kept and do not count as waste.",
    }),
  },
  result: [
    { label: "pattern", unit: "text" },
    { label: "bars", unit: "" },
    { label: "pieces a bar", unit: "" },
    { label: "drop", unit: "mm" },
    { label: "stock length", unit: "mm" },
  ],
  relations: [CUTTING_PLAN],
  *compute({ length, quantity, barLength, barPrice, barsInStock, ...rest }) {
    const pieces = linesOf(length, quantity);
    const bars = offersOf(barLength, barPrice, barsInStock);
    const plan = yield* cutPlanInParts({ pieces, bars, kerf: rest.kerf, trim: rest.trim });
    return tableOf(plan, rest.keepFrom);
  },
});
