import { temperingRelations } from "../../core/tempering/relations";
import { temperedHardness, treatmentOf } from "../../core/tempering/tempered";
import { scalarFunction } from "../declare";
import { quenchToC } from "../hardening/quench-to-argument";
import { steel } from "../steel-argument";
import { temperC, toTenth, treatment } from "./treatment";

export const TEMPERED_HRC = scalarFunction({
  name: "TEMPERED_HRC",
  summary: "Likely hardness after a temper of a blade that hardened through; TEMPERED_RANGE gives the band.",
  parameters: { steel, temperC, ...treatment, quenchToC },
  result: { label: "hardness", unit: "HRC" },
  relations: temperingRelations,
  compute: (values) => toTenth(temperedHardness(values.steel, values.temperC, treatmentOf(values))),
});
