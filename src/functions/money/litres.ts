import { type NumberOptions, number, type Parameter } from "../parameters";

const LITRES_PER_US_GALLON = 3.785411784;
const SPELLINGS = /^(.*?)\s*(l|litres?|liters?|gal|gallons?|us gal)\.?$/i;

/** A volume of liquid in litres: 20, "20 L" or "5 gal" (US gallons). */
export function litres(options: Pick<NumberOptions, "label" | "help">): Parameter<number> {
  const plain = number({ quantity: "number", unit: "L", min: 0.01, max: 100_000, ...options });
  return {
    ...plain,
    kind: "volume",
    accepts: 'litres above 0, or "5 gal"',
    read(cell) {
      const typed = typeof cell === "string" ? SPELLINGS.exec(cell.trim()) : null;
      if (typed === null) return plain.read(cell);
      const [, figure = "", unit = ""] = typed;
      return plain.read(figure) * (/gal/i.test(unit) ? LITRES_PER_US_GALLON : 1);
    },
  };
}
