import { describe, expect, test } from "vitest";
import { assembled } from "../../src/core/shape/assembly";
import { askIfIncluded, edgeAngle, grindAngle } from "../../src/core/shape/edge";
import { pommelMass } from "../../src/core/shape/pommel";
import { swingInertia } from "../../src/core/shape/swing";
import { fullerWidth, hollowDepth, wheelDiameter } from "../../src/core/shape/wheel";

// Every figure is plane geometry at the very end of what is possible, or the pendulum formula by hand.

describe("exactly at the end", () => {
  test("a face of half the thickness behind the edge stands square to it", () => {
    expect(edgeAngle(2, 1)).toBeCloseTo(90, 9);
    expect(() => edgeAngle(2, 0.999)).toThrow("shorter than half the thickness");
  });

  test("an edge as thick as the blade has parallel faces", () => {
    expect(grindAngle(40, 3, 3)).toBe(0);
    expect(() => grindAngle(40, 3, 3.001)).toThrow("is thicker than the blade");
  });

  test("a hollow as high as its wheel is half the wheel deep, and the other way round", () => {
    expect(hollowDepth(100, 100)).toBeCloseTo(50, 9);
    expect(wheelDiameter(100, 50)).toBeCloseTo(100, 9);
    expect(() => wheelDiameter(100, 50.01)).toThrow("half the height, 50 mm");
  });

  test("a fuller as deep as its tool's radius is as wide as the tool", () => {
    expect(fullerWidth(12.5, 12.5)).toBeCloseTo(25, 9);
    expect(() => fullerWidth(12.5, 12.6)).toThrow("more than the radius of the tool");
  });
});

test("half of an angle is asked about up to 90° and no further", () => {
  expect(askIfIncluded(90)).toContain("45");
  expect(askIfIncluded(91)).not.toContain("45.5");
});

test("parts without a mass have no balance", () => {
  expect(() => assembled([])).toThrow("no part with a mass");
});

describe("pommel", () => {
  test("none is needed where the balance is right", () => {
    expect(pommelMass(900, 100, -200, 100)).toBe(0);
  });

  test("none is heavy enough to bring the balance to its own place", () => {
    expect(() => pommelMass(900, 100, -200, -200 + 1e-6)).toThrow("cannot be reached");
  });
});

test("the shortest swing about a pivot is that of a point: 2π √(0.5 m / g) = 1.41875 s", () => {
  expect(() => swingInertia(1000, 500, 1.4)).toThrow("longer than 1.41875 s");
});
