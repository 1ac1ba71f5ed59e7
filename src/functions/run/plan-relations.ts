import { TESTER_UNCERTAINTY } from "../../core/blade/status";
import { STEEL_BY_USE } from "../../core/blade/suitability";
import { MAX_PLATE } from "../../core/hardening/max-section";
import { MONEY } from "../../core/money/price";
import type { Relation } from "../../core/relation";
import { BAR_COUNT } from "../../core/run/bars";
import { FURNACE_ENERGY } from "../../core/run/furnace";
import { STEEL_HEAT } from "../../core/run/heat-content";
import { LEARNING_CURVE } from "../../core/run/learning";
import { LOAD_GROUPING } from "../../core/run/loads";
import { BINOMIAL_STARTS } from "../../core/run/starts";
import { SECTION_AREA } from "../../core/shape/section-area";
import { STATION_MOMENTS } from "../../core/shape/stations";
import { allCarbonRelations, carbonRelation } from "../../core/steel/carbon-relations";
import { densityRelations } from "../../core/steel/density";
import type { Steel } from "../../core/steel/steel";
import { temperingRelations } from "../../core/tempering/relations";

function carbonRelations(steel: Steel | null): readonly Relation[] {
  if (steel === null) return allCarbonRelations();
  const relation = carbonRelation(steel);
  return relation === null ? [] : [relation];
}

/** All that a plan rests on, in the order of its columns, for one steel or for all. */
export function planRelations(steel: Steel | null): readonly Relation[] {
  return [
    STATION_MOMENTS,
    SECTION_AREA,
    ...densityRelations(steel),
    ...carbonRelations(steel),
    ...temperingRelations(steel),
    TESTER_UNCERTAINTY,
    STEEL_BY_USE,
    MAX_PLATE,
    BINOMIAL_STARTS,
    BAR_COUNT,
    LOAD_GROUPING,
    STEEL_HEAT,
    FURNACE_ENERGY,
    LEARNING_CURVE,
    MONEY,
  ];
}
