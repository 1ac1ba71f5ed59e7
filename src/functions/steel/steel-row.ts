import { boundsOf } from "../../core/steel/bounds";
import type { Bounds } from "../../core/steel/composition";
import { limitsRelations } from "../../core/steel/composition-relations";
import { limitsStatus } from "../../core/steel/composition-text";
import { densityOf } from "../../core/steel/density";
import type { Steel } from "../../core/steel/steel";
import { type Answer, rowFunction } from "../declare";
import { steel } from "../steel-argument";

function limits({ low, high }: Bounds): Answer[] {
  return [low ?? "", high ?? ""];
}

function named({ name, grade }: Steel): Answer[] {
  if (grade === null) return [name, "analysis", "", "", ""];
  return [grade.designation, grade.system, grade.standard, grade.uns, grade.enNumber];
}

function row(steel: Steel): Answer[] {
  const carbon = limits(boundsOf(steel, "C"));
  const chromium = limits(boundsOf(steel, "Cr"));
  const status = steel.grade === null ? "as given" : limitsStatus(steel.grade);
  return [...named(steel), steel.family, ...carbon, ...chromium, densityOf(steel).value, status];
}

export const STEEL = rowFunction({
  name: "STEEL",
  topic: "Steel",
  summary: "What the library knows a steel by: names, standard, family, carbon and chromium limits, density.",
  parameters: { steel },
  result: [
    { label: "designation", unit: "text" },
    { label: "system", unit: "text" },
    { label: "standard", unit: "text" },
    { label: "UNS", unit: "text" },
    { label: "EN number", unit: "text" },
    { label: "family", unit: "text" },
    { label: "C low", unit: "mass %" },
    { label: "C high", unit: "mass %" },
    { label: "Cr low", unit: "mass %" },
    { label: "Cr high", unit: "mass %" },
    { label: "density", unit: "g/cm³" },
    { label: "source status", unit: "text" },
  ],
  relations: limitsRelations,
  compute: ({ steel }) => row(steel),
  examples: [
    {
      given: ["T30402"],
      gives: [
        "D2",
        "AISI tool",
        "ASTM A681",
        "T30402",
        "",
        "cold work",
        1.4,
        1.6,
        11,
        13,
        7.7,
        "limits read",
      ],
      source: "ASTM A681 limits and density as suppliers print them",
    },
    {
      given: [1.4116],
      gives: ["X50CrMoV15", "EN", "…", "", "1.4116", "martensitic stainless", 0.45, 0.55, 14, 15, 7.7, "…"],
      source: "EN 10088, as a compilation of grades prints it",
    },
    {
      given: ["420"],
      gives: [
        "420",
        "AISI stainless",
        "…",
        "S42000",
        "",
        "martensitic stainless",
        0.15,
        "",
        12,
        14,
        7.75,
        "…",
      ],
      source: "SAE J405: carbon is a minimum only; density typical of the family",
    },
  ],
});
