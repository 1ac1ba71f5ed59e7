import { READING_RULE, summariseReadings } from "../../core/inspection/readings";
import { rowFunction } from "../declare";
import { number, numberOrNothing, rangeParameter } from "../parameters";

const HRC = { quantity: "hardness", unit: "HRC", above: 0, max: 100 } as const;

export const READINGS = rowFunction({
  name: "READINGS",
  summary:
    "Hardness readings of a blade or a lot summed up: count, mean, range, standard deviation, Cpk and a verdict.",
  parameters: {
    readings: rangeParameter(
      number({ ...HRC, label: "range", help: "Readings in HRC; empty cells are skipped." }),
    ),
    low: numberOrNothing({ ...HRC, label: "low", help: "Lower limit in HRC." }),
    high: numberOrNothing({ ...HRC, label: "high", help: "Upper limit in HRC." }),
  },
  result: [
    { label: "n", unit: "" },
    { label: "mean", unit: "HRC" },
    { label: "range", unit: "HRC" },
    { label: "standard deviation", unit: "HRC" },
    { label: "Cpk", unit: "" },
    { label: "verdict", unit: "text" },
  ],
  relations: [READING_RULE],
  compute: ({ readings, low, high }) => {
    const given = readings.filter((reading) => reading !== undefined);
    const { count, mean, range, deviation, capability, verdict } = summariseReadings(given, low, high);
    return [count, mean, range, deviation ?? "", capability ?? "", verdict];
  },
});
