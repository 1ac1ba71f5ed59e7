import { findQuench } from "../../src/core/hardening/quench-media";
import type { SectionInputs } from "../../src/core/hardening/section-run";
import { findSteel } from "../../src/core/steel/find";

/** A bare section 30 mm wide, straight into fast oil from the usual temperature; what a test is about stands in `more`. */
export function sectionOf(steel: string, spineMm: number, more: Partial<SectionInputs> = {}): SectionInputs {
  return {
    steel: findSteel(steel),
    widthMm: 30,
    spineMm,
    edgeMm: Math.min(1.5, spineMm),
    quench: findQuench("fast oil"),
    clay: 0,
    clayLineMm: 0,
    below: 0,
    transferS: 0,
    bathFactor: 1,
    startC: undefined,
    ...more,
  };
}
