import { TESTER_UNCERTAINTY } from "../../core/blade/status";
import { STEEL_BY_USE } from "../../core/blade/steel-cautions";
import { MAX_PLATE } from "../../core/hardening/max-section";
import { LEARNING_CURVE, MONEY } from "../../core/money/relations";
import type { Relation } from "../../core/relation";
import { FURNACE_ENERGY, LOAD_GROUPING, STEEL_HEAT } from "../../core/run/heat-relations";
import { BAR_COUNT } from "../../core/run/plan-relations";
import { BINOMIAL_STARTS } from "../../core/run/starts";
import { SECTION_AREA, STATION_MOMENTS } from "../../core/shape/relations";
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
