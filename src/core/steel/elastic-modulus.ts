import { relation } from "../relation";

/** Elastic modulus of steel. */
export const STEEL_MODULUS = relation({
  title: "Elastic modulus of steel",
  source: "ferrous-properties-table",
  locator: "30 × 10⁶ psi for 1045, 1095, 4130 and 4340, which is 207 GPa",
  evidence: "compiled",
  inputs: {},
  output: { label: "elastic modulus", unit: "GPa" },
  error: { size: 3, unit: "%", kind: "span of what tables print for carbon, alloy and tool steels" },
  note: "Hardness and temper do not change it. Hardenable stainless steels lie within the span, austenitic ones 5 to 7 % under it.",
});

/** At room temperature [MPa] */
export const ELASTIC_MODULUS = 207_000;
