import { describe, expect, test } from "vitest";
import { attempt, Refusal } from "../../src/core/refusal";
import { findSteel } from "../../src/core/steel/find";
import { hollomonJaffe, hoursAtParameter } from "../../src/core/tempering/hollomon-jaffe";
import { retemper } from "../../src/core/tempering/retemper";
import { temperPlan } from "../../src/core/tempering/temper-plan";
import { temperedHardness } from "../../src/core/tempering/tempered";
import { COMMON_STEELS } from "../steel/common-steels";

/*
 * No source is needed: a blade that reads what its temper is expected to give is one whose target TEMPER_PLAN can be asked
 * for as well. Both tempers together must then soften as much as the one of the plan, as hours at one temperature.
 */

const HOURS = 2;
const SO_FAR = Array.from({ length: 20 }, (_, at) => 150 + 25 * at);

interface Case {
  readonly soFarC: number;
  readonly reading: number;
  readonly target: number;
}

/** Blades of a steel that read at least 0.6 HRC over a target, down to beyond every reach. */
function casesOf(name: string): Case[] {
  return SO_FAR.flatMap((soFarC) => {
    const reading = attempt(() => temperedHardness(findSteel(name), soFarC, { hours: HOURS }));
    if (reading instanceof Refusal) return [];
    const targets = Array.from({ length: 25 }, (_, at) => Math.ceil(2 * reading - 1.2) / 2 - at);
    return targets
      .filter((target) => target >= 20 && target <= reading - 0.6)
      .map((target) => ({ soFarC, reading, target }));
  });
}

const parameter = (celsius: number) => hollomonJaffe(celsius, HOURS);

/** What is wrong with a next temper beside the one planned for a new blade; "" where nothing is. */
function besidePlan(nextC: number, soFarC: number, plannedC: number): string {
  const after = hollomonJaffe(nextC, HOURS + hoursAtParameter(parameter(soFarC), nextC));
  const planned = parameter(plannedC);
  // What the blade has had lies beyond the coolest answer, or as much time again at the same heat is enough.
  if (planned <= parameter(soFarC) || nextC === soFarC) return after >= planned ? "" : `${nextC} is too cool`;
  const isSame = Math.abs(after - planned) < parameter(1) - parameter(0);
  return isSame ? "" : `${nextC} after ${soFarC}; planned at ${plannedC}`;
}

/** What RETEMPER tells otherwise than TEMPER_PLAN does; "" where it does not. */
function contradiction(name: string, { soFarC, reading, target }: Case): string {
  const steel = findSteel(name);
  const known = { celsius: soFarC, hrc: reading };
  const { likelyC, otherC } = temperPlan(steel, target, { hours: HOURS, known });
  const next = attempt(() => retemper(steel, { ...known, hours: HOURS }, target, HOURS));
  const isAhead = likelyC !== null && Math.max(likelyC, otherC ?? 0) > soFarC;
  if (next instanceof Refusal) return isAhead ? `refused: ${next.message}; planned at ${likelyC}` : "";
  if (likelyC === null || next.nextC === null) return `${next.nextC}; planned at ${likelyC}`;
  return besidePlan(next.nextC, soFarC, likelyC);
}

describe("RETEMPER and TEMPER_PLAN have one rule", () => {
  test.each(COMMON_STEELS)("%s", (name) => {
    const cases = casesOf(name);
    const wrong = cases
      .map((one) => [one, contradiction(name, one)] as const)
      .filter(([, said]) => said !== "");
    expect(wrong.slice(0, 3)).toEqual([]);
    expect(cases.length).toBeGreaterThan(20);
  });
});
