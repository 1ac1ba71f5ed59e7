import {
  HEAT_TRANSFER_MEDIA,
  heatTransferOf,
  heatTransferRelation,
} from "../../core/hardening/heat-transfer";
import { IDEAL_DIAMETER } from "../../core/hardening/ideal-diameter";
import { findQuench } from "../../core/hardening/quench-media";
import { quenchedRelations } from "../../core/hardening/quenched";
import { SECTION_QUENCH_MODEL } from "../../core/hardening/section-austenite";
import { PEARLITE } from "../../core/hardening/section-pearlite";
import { CONVERSIONS } from "../../core/hardness/convert";
import type { Relation } from "../../core/relation";
import type { Steel } from "../../core/steel/steel";

/** Relations behind the section calculation, for one steel or for all. */
export function sectionRelations(steel: Steel | null): readonly Relation[] {
  const media = HEAT_TRANSFER_MEDIA.map((medium) => heatTransferRelation(heatTransferOf(findQuench(medium))));
  const hardness = steel === null ? [] : quenchedRelations(steel);
  return [SECTION_QUENCH_MODEL, PEARLITE, IDEAL_DIAMETER, ...hardness, ...media, ...CONVERSIONS.slice(0, 1)];
}
