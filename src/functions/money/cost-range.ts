import { COST_BAND, costRange } from "../../core/money/cost-range";
import { BINOMIAL_STARTS, USUAL_CONFIDENCE } from "../../core/run/starts";
import { rowFunction } from "../declare";
import { number, optionalNumber } from "../parameters";
import { blades, confidence, money, yieldOptions } from "./arguments";

const shareOf = (which: string, help: string) =>
  number({ ...yieldOptions, label: `yield ${which}`, help: `${help} 0.92 or 92 %.` });

const hoursOf = (which: string, help: string) =>
  number({ label: `hours ${which}`, quantity: "time", unit: "h", min: 0, max: 100_000, help });

const materialOf = (which: string, help: string) => number(money({ label: `material ${which}`, help }));

function moverText(name: string, low: number, high: number): string {
  if (name === "nothing") return "nothing: all figures are certain";
  return `${name}: alone it moves the cost from ${low.toFixed(2)} to ${high.toFixed(2)}`;
}

export const COST_RANGE = rowFunction({
  name: "COST_RANGE",
  summary:
    "Band on the cost of one good piece where yield, hours and material are known as low, likely and high; holds 9 lots in 10.",
  parameters: {
    good: number(blades({ label: "good", help: "Good pieces wanted." })),
    yieldLow: shareOf("low", "Least share to be believed,"),
    yieldLikely: shareOf("likely", "Likeliest share,"),
    yieldHigh: shareOf("high", "Best share to be believed,"),
    hoursLow: hoursOf("low", "Least bench hours of one start."),
    hoursLikely: hoursOf("likely", "Likeliest bench hours of one start."),
    hoursHigh: hoursOf("high", "Most bench hours of one start."),
    hourRate: number(money({ label: "hour rate", help: "Cost of one bench hour." })),
    materialLow: materialOf("low", "Least cost of steel, belts and the like for one start."),
    materialLikely: materialOf("likely", "Likeliest cost of these."),
    materialHigh: materialOf("high", "Most that these may cost."),
    lotCost: optionalNumber({
      ...money({ label: "lot cost", help: "All that is paid once a lot: set-up, outside charges." }),
      fallback: 0,
    }),
    confidence: optionalNumber({
      ...confidence({ help: "Chance of having enough good ones, by which the starts are counted." }),
      fallback: USUAL_CONFIDENCE,
    }),
  },
  result: [
    { label: "low", unit: "money" },
    { label: "likely", unit: "money" },
    { label: "high", unit: "money" },
    { label: "best", unit: "money" },
    { label: "worst", unit: "money" },
    { label: "matters most", unit: "text" },
  ],
  relations: [COST_BAND, BINOMIAL_STARTS],
  compute: (values) => {
    const range = costRange({
      good: values.good,
      yieldShare: { low: values.yieldLow, likely: values.yieldLikely, high: values.yieldHigh },
      hours: { low: values.hoursLow, likely: values.hoursLikely, high: values.hoursHigh },
      hourRate: values.hourRate,
      material: { low: values.materialLow, likely: values.materialLikely, high: values.materialHigh },
      lotCost: values.lotCost,
      confidence: values.confidence,
    });
    const { low, likely, high, best, worst, mover, moverLow, moverHigh } = range;
    return [low, likely, high, best, worst, moverText(mover, moverLow, moverHigh)];
  },
});
