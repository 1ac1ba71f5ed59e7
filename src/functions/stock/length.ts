import { quantityText } from "../../core/quantity-text";
import { InvalidValue } from "../../core/refusal";
import { SHEET_GAUGE } from "../../core/stock/gauges";
import { scalarFunction } from "../declare";
import { number, text } from "../parameters";
import { shopLength } from "./shop-length";

const bare = number({ label: "length", quantity: "length", unit: "mm", min: 0, max: 36_525, help: "" });

function lengthOf(given: string | number): number {
  const millimetres = typeof given === "number" ? bare.read(given) : shopLength(given);
  if (millimetres >= 0) return millimetres;
  throw new InvalidValue(`length: ${quantityText(millimetres, "mm")} given; give a length from 0`);
}

export const LENGTH = scalarFunction({
  name: "LENGTH",
  summary: "Any length of the shop in mm: inches with fractions, feet and inches, gauge numbers by family.",
  parameters: {
    length: text({
      label: "length",
      kind: "length",
      help: 'Text with its unit: "1-1/4 in", "3 ft 2-1/2 in", "10 ga", "16 ga stainless", "14 swg". A gauge is that of carbon steel sheet unless stainless or SWG is said; a bare number is mm.',
      accepts: '"1-1/4 in", "10 ga", "16 ga stainless" or a number in mm',
      find: lengthOf,
    }),
  },
  result: { label: "length", unit: "mm" },
  relations: [SHEET_GAUGE],
  compute: ({ length }) => length,
});
