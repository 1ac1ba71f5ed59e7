import { densityRelations } from "../../core/steel/density";
import type { Steel } from "../../core/steel/steel";
import { CUTTING_PLAN } from "../../core/stock/cut-plan";
import { BAR_SIDE, KG_IN_STOCK } from "../../core/stock/cutting-limits";
import { type BlankLine, steelOrderInParts } from "../../core/stock/steel-order";
import { tableFunction } from "../declare";
import { besideRow, type Column, filled } from "../lists";
import { number, numberOrNothing, rangeParameter } from "../parameters";
import { steel } from "../steel-argument";
import { barLengths, kerf, pieceLengths, quantities, trim } from "./arguments";

interface Columns {
  readonly steel: Column<Steel>;
  readonly width: Column<number>;
  readonly thickness: Column<number>;
  readonly length: Column<number>;
  readonly quantity: Column<number>;
  readonly barLength: Column<number>;
  readonly inStock: Column<number>;
}

/** Rows in which neither a length nor a quantity stands are no lines of the run. */
function linesOf(columns: Columns): BlankLine[] {
  const rows = Math.max(...Object.values(columns).map((column) => column.length));
  const lines: BlankLine[] = [];
  for (let row = 0; row < rows; row += 1) {
    const at = <T>(column: Column<T>, label: string) => besideRow(column, row, rows, label);
    const length = at(columns.length, "length");
    const quantity = at(columns.quantity, "quantity");
    if ((length === undefined && quantity === undefined) || quantity === 0) continue;
    lines.push({
      steel: filled(at(columns.steel, "steel"), row, "steel"),
      width: filled(at(columns.width, "width"), row, "width"),
      thickness: filled(at(columns.thickness, "thickness"), row, "thickness"),
      length: filled(length, row, "length"),
      quantity: filled(quantity, row, "quantity"),
      barLength: filled(at(columns.barLength, "bar length"), row, "bar length"),
      inStock: at(columns.inStock, "kg in stock"),
    });
  }
  return lines;
}

function barSide(label: string) {
  return rangeParameter(
    number({
      ...BAR_SIDE,
      label,
      quantity: "length",
      help: `${label[0]?.toUpperCase()}${label.slice(1)} of the bar in mm, one for all or one a line.`,
    }),
  );
}

export const STEEL_ORDER = tableFunction({
  name: "STEEL_ORDER",
  takesLong: true,
  summary:
    "Steel to buy for a run, a row a steel and section: lines that share both share bars; stock in hand is deducted.",
  parameters: {
    steel: rangeParameter(steel),
    width: barSide("width"),
    thickness: barSide("thickness"),
    length: pieceLengths,
    quantity: quantities,
    barLength: barLengths,
    kerf,
    trim,
    inStock: rangeParameter(
      numberOrNothing({
        ...KG_IN_STOCK,
        label: "kg in stock",
        quantity: "mass",
        help: "Bars of that steel and section in the rack, in kg; counted in whole bars of the length ordered, repeated figures once.",
      }),
    ),
  },
  result: [
    { label: "steel", unit: "text" },
    { label: "section", unit: "text" },
    { label: "bars", unit: "" },
    { label: "mass", unit: "kg" },
    { label: "drop", unit: "mm" },
  ],
  relations: (steel) => [CUTTING_PLAN, ...densityRelations(steel)],
  *compute({ kerf, trim, ...columns }) {
    const orders = yield* steelOrderInParts(linesOf(columns), kerf, trim);
    return orders.map(({ steel, section, bars, kilograms, drop }) => [steel, section, bars, kilograms, drop]);
  },
});
