import { quantityText } from "../../core/quantity-text";
import { InvalidValue } from "../../core/refusal";
import { SHEET_GAUGE } from "../../core/stock/relations";
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
  topic: "Run, stock and money",
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
  examples: [
    { given: ["10 ga"], gives: 3.4163, within: 5e-5, source: "manufacturers' standard gauge, 0.1345 in" },
    {
      given: ["10 ga carbon"],
      gives: 3.4163,
      within: 5e-5,
      source: "manufacturers' standard gauge, 0.1345 in",
    },
    {
      given: ["16 ga stainless"],
      gives: 1.5875,
      within: 5e-5,
      source: "US standard gauge, 0.0625 in, from memory",
    },
    { given: ["14 SWG"], gives: 2.032, within: 5e-5, source: "BS 3737, 0.080 in" },
    { given: ['1 1/4"'], gives: 31.75, within: 1e-9, source: "by definition, 25.4 mm an inch" },
    { given: ["3 ft 2-1/2 in"], gives: 977.9, within: 1e-9, source: "by definition: 38.5 × 25.4" },
  ],
});
