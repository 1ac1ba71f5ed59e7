import { temperingRelations } from "../../core/tempering/relations";
import { temperFor } from "../../core/tempering/temper-for";
import { treatmentOf } from "../../core/tempering/tempered";
import { scalarFunction } from "../declare";
import { quenchToC } from "../hardening/quench-to-argument";
import { steel } from "../steel-argument";
import { targetHrc, toTenth, treatment } from "./treatment";

export const TEMPER_FOR = scalarFunction({
  name: "TEMPER_FOR",
  summary:
    "Temper for a hardness in a blade that hardened through, from 150 °C (302 °F) up: a starting point, so test one and step up.",
  parameters: { steel, targetHrc, ...treatment, quenchToC },
  result: { label: "temper", unit: "°C" },
  relations: temperingRelations,
  compute: (values) => toTenth(temperFor(values.steel, values.targetHrc, treatmentOf(values))),
});
