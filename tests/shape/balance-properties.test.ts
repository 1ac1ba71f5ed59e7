import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { assembled, type Part } from "../../src/core/shape/assembly";
import { effectiveMass, percussionCentre } from "../../src/core/shape/percussion";
import { pommelMass } from "../../src/core/shape/pommel";
import { swingInertia } from "../../src/core/shape/swing";

const amount = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const part = fc.record({ mass: amount(1, 1000), position: amount(-300, 900), inertia: amount(0, 0.05) });

function expectSame(found: number, wanted: number, size: number): void {
  expect(Math.abs(found - wanted)).toBeLessThanOrEqual(1e-9 * size);
}

describe("parts put together", () => {
  test("in any grouping and order they give the same whole", () => {
    fc.assert(
      fc.property(fc.array(part, { minLength: 2, maxLength: 8 }), fc.nat(), (parts, cut) => {
        const whole = assembled(parts);
        const at = 1 + (cut % (parts.length - 1));
        const asPart = (some: readonly Part[]): Part => {
          const { mass, balance, inertia } = assembled(some);
          return { mass, position: balance, inertia };
        };
        const twice = assembled([asPart(parts.slice(at)), asPart(parts.slice(0, at))]);
        expectSame(twice.mass, whole.mass, whole.mass);
        expectSame(twice.balance, whole.balance, 1000);
        expectSame(twice.inertia, whole.inertia, whole.inertia + 1);
      }),
    );
  });

  test("a wooden cylinder 1.216 m long, 12.2 mm in radius, 418 g: published 51.5 g m²", () => {
    // Published figure: a study of the waggle test (hroarr.com); formula m (3 r² + l²) / 12 in any mechanics text.
    const slices = 64;
    const each = 1216 / slices;
    const mass = 418 / slices;
    const own = ((mass / 1000) * (3 * 0.0122 ** 2 + (each / 1000) ** 2)) / 12;
    const parts = Array.from({ length: slices }, (_, index) => ({
      mass,
      position: (index + 0.5) * each,
      inertia: own,
    }));
    const { inertia, balance } = assembled(parts);
    expect(inertia).toBeCloseTo(0.0515221, 7);
    expect(inertia).toBeCloseTo(0.0515, 4);
    expect(balance).toBeCloseTo(608, 9);
  });
});

describe("pairs of points", () => {
  const body = fc.record({
    mass: amount(100, 3000),
    balance: amount(-100, 500),
    inertia: amount(0.001, 0.3),
  });

  test("the partner's partner is the point itself, and the effective masses of a pair add up to the whole", () => {
    fc.assert(
      fc.property(body, amount(5, 600), (rigid, distance) => {
        const held = rigid.balance - distance;
        const partner = percussionCentre(rigid, held);
        expect(Math.abs(percussionCentre(rigid, partner) - held)).toBeLessThan(
          1e-6 * (1 + Math.abs(partner)),
        );
        const sum = effectiveMass(rigid, held) + effectiveMass(rigid, partner);
        expectSame(sum, rigid.mass, rigid.mass);
      }),
    );
  });

  test("a swing timed on paper gives the inertia back", () => {
    fc.assert(
      fc.property(body, amount(20, 600), ({ mass, inertia }, distance) => {
        const kg = mass / 1000;
        const d = distance / 1000;
        const period = 2 * Math.PI * Math.sqrt((inertia + kg * d * d) / (kg * 9.80665 * d));
        expectSame(swingInertia(mass, distance, period), inertia, inertia + kg);
      }),
    );
  });

  test("the pommel found brings the balance where it was wanted", () => {
    fc.assert(
      fc.property(
        amount(300, 3000),
        amount(50, 300),
        amount(-300, -100),
        amount(0, 0.99),
        (mass, rest, at, share) => {
          const wanted = at + (rest - at) * (0.2 + 0.8 * share);
          const pommel = pommelMass(mass, rest, at, wanted);
          const { balance } = assembled([
            { mass, position: rest, inertia: 0 },
            { mass: pommel, position: at, inertia: 0 },
          ]);
          expect(Math.abs(balance - wanted)).toBeLessThan(1e-6);
        },
      ),
    );
  });
});
