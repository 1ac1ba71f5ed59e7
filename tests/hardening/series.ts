/** The textbook series for a plane wall and a bar: temperature after a step change of surroundings. */

export interface Wall {
  readonly thicknessM: number;
  readonly heatTransfer: number;
  readonly conductivity: number;
  readonly density: number;
  readonly heatCapacity: number;
}

const TERMS = 60;

/** Roots of z tan z = Bi, each bracketed by its own branch. */
export function roots(biot: number, terms = TERMS): number[] {
  return Array.from({ length: terms }, (_, n) => {
    let low = n * Math.PI + 1e-12;
    let high = n * Math.PI + Math.PI / 2 - 1e-12;
    for (let halving = 0; halving < 200; halving += 1) {
      const middle = (low + high) / 2;
      if (middle * Math.tan(middle) < biot) low = middle;
      else high = middle;
    }
    return (low + high) / 2;
  });
}

export function coefficient(zeta: number): number {
  return (4 * Math.sin(zeta)) / (2 * zeta + Math.sin(2 * zeta));
}

/** Share of the first temperature difference that is left; `place` is 0 at mid-plane, 1 at the face. */
export function share(wall: Wall, seconds: number, place: number): number {
  const half = wall.thicknessM / 2;
  const fourier = (wall.conductivity / (wall.density * wall.heatCapacity)) * (seconds / half ** 2);
  const zetas = roots((wall.heatTransfer * half) / wall.conductivity);
  return zetas.reduce(
    (sum, zeta) => sum + coefficient(zeta) * Math.exp(-(zeta ** 2) * fourier) * Math.cos(zeta * place),
    0,
  );
}
