import { bandFor } from "../../core/blade/band-by-steel";
import { USES as ALL_USES, bandRelation, basisText, leanText, type Use } from "../../core/blade/bands";
import { rowFunction } from "../declare";
import { steelOrNothing } from "../steel-argument";
import { use } from "./use-argument";

export const BAND = rowFunction({
  name: "BAND",
  summary:
    "Usual hardness, edge angle and thickness behind the edge for a use, and where told for its steel, with basis and which end to lean to.",
  parameters: { use, steel: steelOrNothing },
  result: [
    { label: "HRC low", unit: "HRC" },
    { label: "HRC aim", unit: "HRC" },
    { label: "HRC high", unit: "HRC" },
    { label: "part", unit: "text" },
    { label: "edge angle low", unit: "° a side" },
    { label: "edge angle high", unit: "° a side" },
    { label: "behind edge low", unit: "mm" },
    { label: "behind edge high", unit: "mm" },
    { label: "basis", unit: "text" },
    { label: "lean", unit: "text" },
  ],
  relations: (steel) => ALL_USES.map((each) => bandRelation(bandFor(each, steel ?? undefined))),
  compute: ({ use: asked, steel }) => rowOf(bandFor(asked, steel)),
});

function rowOf(use: Use) {
  return [
    use.low,
    use.aim,
    use.high,
    use.part,
    use.angleLow ?? "",
    use.angleHigh ?? "",
    use.behindEdgeLow ?? "",
    use.behindEdgeHigh ?? "",
    basisText(use),
    leanText(use),
  ];
}
