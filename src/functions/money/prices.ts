import { lotCost, MONEY, outsideCharge, priceAtMargin, priceAtMarkup } from "../../core/money/price";
import { askIfPercent } from "../../core/run/starts";
import { scalarFunction } from "../declare";
import { number } from "../parameters";
import { extraMoney, money } from "./arguments";

export const OUTSIDE_CHARGE = scalarFunction({
  name: "OUTSIDE_CHARGE",
  summary: "What an outside shop charges: rate by quantity but no less than its minimum, plus the set-up.",
  parameters: {
    quantity: number({
      label: "quantity",
      quantity: "number",
      unit: "",
      min: 0,
      max: 1e9,
      help: "Pieces or kg, as the rate counts them.",
    }),
    rate: number(money({ label: "rate", help: "Charge for one piece or one kg." })),
    minimum: number(money({ label: "minimum", help: "Least charge for a lot; 0 for none." })),
    setUp: extraMoney("set-up", "Charged once on top."),
  },
  result: { label: "charge", unit: "money" },
  relations: [MONEY],
  compute: ({ quantity, rate, minimum, setUp }) => outsideCharge(quantity, rate, minimum, setUp),
});

export const LOT_COST = scalarFunction({
  name: "LOT_COST",
  summary:
    "Cost of a whole lot: set-up, hours, material a piece times the quantity, outside services; divide by the quantity for one.",
  parameters: {
    setUp: number(money({ label: "set-up", help: "Once a lot; 0 for none." })),
    runHours: number({
      label: "run hours",
      quantity: "time",
      unit: "h",
      min: 0,
      max: 1e6,
      help: "Hours of all pieces together, as LEARNING with total gives them.",
    }),
    hourRate: number(money({ label: "hour rate", help: "Cost of one hour." })),
    material: number(money({ label: "material", help: "Material of one piece." })),
    outside: number(money({ label: "outside", help: "Outside services for the whole lot; 0 for none." })),
    quantity: number({
      label: "quantity",
      quantity: "count",
      unit: "",
      whole: true,
      min: 1,
      max: 1e6,
      help: "Pieces in the lot.",
    }),
  },
  result: { label: "cost of the lot", unit: "money" },
  relations: [MONEY],
  compute: (lot) => lotCost(lot),
});

const cost = number(money({ label: "cost", help: "Cost of one piece." }));

export const PRICE_AT_MARGIN = scalarFunction({
  name: "PRICE_AT_MARGIN",
  summary: "Price of which the margin is a share: cost ÷ (1 - margin).",
  parameters: {
    cost,
    margin: number({
      label: "margin",
      quantity: "fraction",
      unit: "",
      min: 0,
      max: 0.99,
      askOver: askIfPercent,
      help: "Share of the price that is left after the cost, 0.35 or 35 %.",
    }),
  },
  result: { label: "price", unit: "money" },
  relations: [MONEY],
  compute: ({ cost, margin }) => priceAtMargin(cost, margin),
});

export const PRICE_AT_MARKUP = scalarFunction({
  name: "PRICE_AT_MARKUP",
  summary: "Price that is the cost and a share of the cost on top: cost × (1 + markup).",
  parameters: {
    cost,
    markup: number({
      label: "markup",
      quantity: "fraction",
      unit: "",
      min: 0,
      max: 10,
      askOver: askIfPercent,
      help: "Share of the cost that is added, 0.4 or 40 %.",
    }),
  },
  result: { label: "price", unit: "money" },
  relations: [MONEY],
  compute: ({ cost, markup }) => priceAtMarkup(cost, markup),
});
