import { FORGE_STOCK, forgeLength, LOSS_RULES, USUAL_LOSSES } from "../../core/stock/forge-length";
import { choice } from "../choice";
import { scalarFunction } from "../declare";
import { number, optionalNumber } from "../parameters";

function side(label: string) {
  return number({
    label,
    quantity: "length",
    unit: "mm",
    min: 0.1,
    max: 1000,
    help: `${label[0]?.toUpperCase()}${label.slice(1)} in mm.`,
  });
}

function share(label: string, help: string, max: number, fallback: number) {
  const askOver = (value: number) =>
    value <= 100 ? `was ${value} % meant? Give ${value / 100}` : `give a share up to ${max}`;
  return optionalNumber({ label, quantity: "fraction", unit: "", min: 0, max, fallback, help, askOver });
}

export const FORGE_LENGTH = scalarFunction({
  name: "FORGE_LENGTH",
  summary:
    "Length of bar to forge a blade from: finished volume raised by grinding, scale and crop, plus the tong hold.",
  parameters: {
    volume: number({
      label: "volume mm³",
      quantity: "volume",
      unit: "mm³",
      min: 0.001,
      max: 1e9,
      help: "Finished volume with the tang in mm³, as STATIONS gives it.",
    }),
    barWidth: side("bar width"),
    barThickness: side("bar thickness"),
    grind: share(
      "grind",
      "Ground off after forging, as a share of the finished volume.",
      1,
      USUAL_LOSSES.grind,
    ),
    scale: share("scale", "Lost to scale, as a share.", 0.5, USUAL_LOSSES.scale),
    crop: share("crop", "Cut off at the ends, as a share.", 0.5, USUAL_LOSSES.crop),
    tong: optionalNumber({
      label: "tong mm",
      quantity: "length",
      unit: "mm",
      min: 0,
      max: 1000,
      fallback: 0,
      help: "Held in the tongs and cut off, in mm.",
    }),
    rule: choice({
      label: "rule",
      words: LOSS_RULES,
      help: "multiply: each loss of what the last one left; add: all losses of the finished volume.",
    }),
  },
  result: { label: "length", unit: "mm" },
  relations: [FORGE_STOCK],
  compute: (forging) => forgeLength(forging),
});
