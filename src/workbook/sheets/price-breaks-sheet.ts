import type { Costs } from "./costs-sheet";
import type { Cover } from "./cover-sheet";
import type { Lines } from "./lines-sheet";
import { lineColumns } from "./parts/line-columns";
import { calcColumn, type TableColumn, type TableColumns, TableSheet } from "./parts/table-sheet";

const QUANTITIES = [1, 5, 10, 25, 50, 100] as const;

type Quantity = (typeof QUANTITIES)[number];
export type BreakKey = "line" | "item" | "material" | `cost${Quantity}` | `price${Quantity}`;

/** Unit cost and price of each line for other quantities. */
export function priceBreaksSheet(cover: Cover, lines: Lines, costs: Costs): TableSheet<BreakKey> {
  const figure = (quantity: Quantity, column: number) => (at: (key: BreakKey) => string, index: number) => {
    const of = (key: Parameters<Costs["lookup"]>[0]) => costs.at(key, index);
    const hour = `N(${cover.at("hourRate")})+N(${cover.at("overheadRate")})`;
    const curve = `${of("first")},IF(${of("rate")}="",1,${of("rate")}),IF(${of("model")}="","unit",${of("model")})`;
    const chance = `${lines.at("yield", index)},${lines.at("confidence", index)}`;
    const setUp = `N(${of("setUp")})*(${hour})`;
    const call = `BLADE.PRICE_BREAKS(${quantity},${setUp},${curve},${hour},${at("material")},0,0,0,${of("margin")},${cover.at("priceStep")},${chance})`;
    return `IF((N(${of("first")})=0)+(${of("margin")}="")>0,"",INDEX(${call},1,${column}))`;
  };
  const money = { format: "#,##0.00" };
  const breaks = QUANTITIES.flatMap((quantity): [BreakKey, TableColumn<BreakKey>][] => [
    [`cost${quantity}`, calcColumn(`Cost at ${quantity}`, 66, figure(quantity, 6), money)],
    [`price${quantity}`, calcColumn(`Price at ${quantity}`, 66, figure(quantity, 7), money)],
  ]);
  const material = (_: unknown, index: number) => {
    const of = (key: Parameters<Costs["lookup"]>[0]) => `N(${costs.at(key, index)})`;
    const parts = ["steel", "energy", "outside", "belts", "fittings", "packed"] as const;
    return `(${parts.map(of).join("+")})/${of("starts")}`;
  };
  const columns = {
    ...lineColumns<BreakKey>(() => lines, 174),
    material: calcColumn<BreakKey>("Material a start", 66, material, {
      ...money,
      needs: (_, index) => [costs.at("starts", index)],
    }),
    ...Object.fromEntries(breaks),
  } as TableColumns<BreakKey>;
  return new TableSheet("Price breaks", columns, lines.count, {
    title: "Price breaks: what other quantities would cost",
    note: "For good pieces, starts by the line's yield. Material a start (steel, energy, outside work, belts, fittings) is taken as it is now.",
    frozenColumns: 2,
  });
}
