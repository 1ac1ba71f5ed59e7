import { carbideRelations } from "../../core/hardening/carbides";
import { QUENCH_CRACK } from "../../core/hardening/crack-risk";
import { DECARBURISED_SKIN } from "../../core/hardening/decarb";
import { maxSectionRelations } from "../../core/hardening/max-section";
import { RATING_RELATION, TOOL_STEEL_RATINGS } from "../../core/steel/ratings";
import { stainlessRelations } from "../../core/steel/stainless";
import { toughnessRelations } from "../../core/steel/toughness";
import { steelTraits } from "../../core/steel/traits";
import { rowFunction } from "../declare";
import { usualHardenC } from "../hardening/harden-argument";
import { steel } from "../steel-argument";

/** A volume of carbide as it may be claimed: half a per cent. */
const toHalf = (volume: number) => Math.round(volume * 2) / 2;

export const STEEL_TRAITS = rowFunction({
  name: "STEEL_TRAITS",
  summary:
    "What a steel is like: toughness and wear from 1 (low) to 9 (high), carbide, how it hardens and rusts, and what the shop must have.",
  parameters: { steel, hardenC: usualHardenC },
  result: [
    { label: "kind", unit: "text" },
    { label: "toughness", unit: "1-9" },
    { label: "wear", unit: "1-9" },
    { label: "carbide", unit: "volume %" },
    { label: "depth of hardening", unit: "text" },
    { label: "safety in hardening", unit: "text" },
    { label: "size change", unit: "text" },
    { label: "skin loss", unit: "text" },
    { label: "rust", unit: "text" },
    { label: "window", unit: "text" },
    { label: "needs", unit: "text" },
    { label: "basis", unit: "text" },
  ],
  relations: (steel) => [
    TOOL_STEEL_RATINGS,
    RATING_RELATION,
    ...carbideRelations(steel),
    QUENCH_CRACK,
    DECARBURISED_SKIN,
    ...(steel === null ? [] : maxSectionRelations(steel)),
    ...stainlessRelations(steel),
    ...toughnessRelations(steel),
  ],
  compute: ({ steel, hardenC }) => {
    const traits = steelTraits(steel, hardenC);
    const { kind, ratings, carbide, depth, safety, sizeChange, skin, rust, window, needs, basis } = traits;
    return [
      kind,
      ratings?.toughness ?? "",
      ratings?.wear ?? "",
      carbide === undefined ? "" : toHalf(carbide),
      depth,
      safety,
      sizeChange,
      skin,
      rust,
      window,
      needs,
      basis,
    ];
  },
});
