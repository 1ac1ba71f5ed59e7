import table from "../../data/steel/usual-carbon.json";
import { quantityText } from "../quantity-text";
import { number, records, text } from "../table";

const usual = new Map(
  records(table, { grade: text, carbon: number, why: text }).map((row) => [row.grade, row]),
);

/** Carbon that a grade is usually sold with where its standard leaves it open [mass %]; `undefined` where none is held. */
export function usualCarbon(designation: string): number | undefined {
  return usual.get(designation)?.carbon;
}

/** Says that the usual carbon stands for what the standard leaves open; "" for every other grade. */
export function usualCarbonCaution(designation: string): string {
  const held = usual.get(designation);
  if (held === undefined) return "";
  return `${designation} fixes no carbon: ${quantityText(held.carbon, "%")} taken as usual (${held.why}); check the certificate`;
}
