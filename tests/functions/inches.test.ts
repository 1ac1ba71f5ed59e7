import { describe, expect, it } from "vitest";
import { STEELS_FOR } from "../../src/functions/blade";
import type { WorksheetFunction } from "../../src/functions/declare";
import { RECIPE, TREATMENT } from "../../src/functions/run";
import { MASS, SET_RADIUS, STATIONS } from "../../src/functions/shape";
import { answer } from "../steel/answer";

const said = (fn: WorksheetFunction, ...given: unknown[]) => String(answer(fn, ...given)[0]?.[0]);

describe("a bare figure that no blade has in mm is asked about", () => {
  it.each<[string, WorksheetFunction, unknown[]]>([
    ["a blade of 12 × 1.5 × 0.25", MASS, [12, 1.5, 0.25]],
    ["1/8 in as 0.125", SET_RADIUS, [0.125, 58]],
    ["a thickness in the choice of a steel", STEELS_FOR, ["European sword sharp", 0.25]],
    [
      "stations that are nowhere thick enough",
      STATIONS,
      [
        [[0], [12]],
        [[1.5], [1]],
        [[0.25], [0.1]],
      ],
    ],
  ])("%s", (_, fn, given) => {
    expect(said(fn, ...given)).toMatch(/did you mean inches\? Write/);
  });

  it("with its unit each is answered", () => {
    // 12 × 1.5 × 0.25 in, flat ground: half of 4.5 in³ is 36.87 cm³, 7.85 g each (any table of densities).
    expect(Number(said(MASS, "12 in", "1.5 in", "0.25 in"))).toBeCloseTo(289.44, 1);
    expect(Number(said(MASS, "12 mm", "1.5 mm", "0.25 mm"))).toBeCloseTo(0.01766, 4);
    expect(said(SET_RADIUS, "0.125 mm", 58)).not.toMatch(/inches/);
    // A thin point is no question.
    expect(said(STATIONS, [[0], [300]], [[30], [1]], [[4], [0.2]])).not.toMatch(/inches/);
  });

  it("1,200 is refused, which one country reads as 1.2", () => {
    expect(said(MASS, "1,200", 30, 5)).toMatch(/"1,200" reads as 1200 or as 1.2/);
  });
});

describe("a bare temper that may be °F", () => {
  const cautions = (temper: unknown) =>
    String(
      answer(TREATMENT, "1095", "Chef knife thin hard", null, "fast oil", 2, 250, null, null, temper)[0]?.[3],
    );

  it("is asked about in TREATMENT where the same figure as °F leads nearer to the band", () => {
    expect(cautions(400)).toContain(
      '400 taken as 400 °C (752 °F); write "400F" if °F was meant (204 °C (400 °F))',
    );
    for (const meant of ["400F", "400 °C", 200]) expect(cautions(meant)).not.toContain("if °F was meant");
  });

  it("a recipe says that its temper lies in the brittle range", () => {
    expect(said(RECIPE, "5160", 52, "fast oil")).toMatch(/temper 359 °C \(678 °F\), in its brittle range$/);
    expect(said(RECIPE, "5160", 60, "fast oil")).not.toContain("brittle");
  });
});
