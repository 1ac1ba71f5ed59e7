import type { HeatTransferCoefficient } from "./heat-transfer";
import type { SectionGrid } from "./section-grid";
import { solveBanded } from "./section-matrix";
import { meanHeatCapacity, type SectionSteel } from "./section-steel";
import { transmission } from "./section-surface";

/** Resistance of a coat on each surface, m²K/W. */
export interface Coat {
  readonly flank: Float64Array;
  readonly edge: number;
  readonly spine: number;
}

/** What surrounds the blade, until when. */
export interface Stage {
  readonly coefficient: HeatTransferCoefficient;
  /** Bath factor on the heat transfer coefficient. */
  readonly factor: number;
  readonly untilS: number;
}

/**
 * Heat balance of every cell over one step, as linear equations for the temperatures at its end.
 * What leaves one cell enters its neighbour, so no heat is lost between them.
 */
export class SectionEquations {
  /** Transmission to the bath from each cell, W/K a metre of blade. */
  readonly toBath: Float64Array;
  /** Heat store of each cell as booked, J/K a metre of blade. */
  readonly store: Float64Array;
  /** Mass of each cell, kg a metre of blade. */
  readonly mass: Float64Array;
  private readonly right: Float64Array;
  private readonly bands: Float64Array;
  private readonly conductivity: Float64Array;
  /** Shape of the conduction to the layer below and to the column before, as wide over as long. */
  private readonly across: Float64Array;
  private readonly along: Float64Array;

  constructor(
    private readonly grid: SectionGrid,
    private readonly steel: SectionSteel,
    private readonly coat: Coat,
  ) {
    const { columns, layers, dx, half } = grid;
    const cells = columns * layers;
    this.toBath = new Float64Array(cells);
    this.store = new Float64Array(cells);
    this.right = new Float64Array(cells);
    this.conductivity = new Float64Array(cells);
    this.bands = new Float64Array(cells * (layers + 1));
    const columnOf = (cell: number) => Math.floor(cell / layers);
    this.mass = this.right.map((_, cell) => (steel.density * dx * (half[columnOf(cell)] as number)) / layers);
    this.across = this.right.map((_, cell) =>
      cell % layers === 0 ? 0 : dx / ((half[columnOf(cell)] as number) / layers),
    );
    this.along = this.right.map((_, cell) =>
      cell < layers ? 0 : (grid.border[columnOf(cell)] as number) / layers / dx,
    );
  }

  /**
   * Temperatures at the end of a step.
   *
   * @param old - At its beginning, °C.
   * @param guess - Expected at its end, °C; overwritten with the solution.
   * @param heat - Set free in each cell during the step, J a metre of blade.
   * @param dt - Length of the step, s.
   */
  solve(old: Float64Array, guess: Float64Array, heat: Float64Array, dt: number, stage: Stage): void {
    this.fillStore(old, guess, heat, dt);
    this.fillConduction();
    this.fillToBath(guess, stage);
    solveBanded(this.bands, this.right, this.grid.layers);
    guess.set(this.right);
  }

  /** Transmission to the bath at given temperatures, into `toBath`. */
  surfaces(temperature: Float64Array, stage: Stage): void {
    const { columns, layers } = this.grid;
    this.toBath.fill(0);
    for (let column = 0; column < columns; column += 1) this.addFlank(column, temperature, stage);
    for (let layer = 0; layer < layers; layer += 1) {
      this.addEnd(layer, 0, this.coat.edge, temperature, stage);
      this.addEnd((columns - 1) * layers + layer, columns, this.coat.spine, temperature, stage);
    }
  }

  /** Conductivities for the temperatures given. */
  conduct(temperature: Float64Array): void {
    for (let cell = 0; cell < temperature.length; cell += 1) {
      this.conductivity[cell] = this.steel.conductivity(temperature[cell] as number);
    }
  }

  private fillStore(old: Float64Array, guess: Float64Array, heat: Float64Array, dt: number): void {
    const width = this.grid.layers + 1;
    this.bands.fill(0);
    this.conduct(guess);
    for (let cell = 0; cell < old.length; cell += 1) {
      const from = old[cell] as number;
      const store = (this.mass[cell] as number) * meanHeatCapacity(this.steel, from, guess[cell] as number);
      this.store[cell] = store;
      this.bands[cell * width] = store / dt;
      this.right[cell] = (store * from + (heat[cell] as number)) / dt;
    }
  }

  private fillConduction(): void {
    const { layers } = this.grid;
    for (let cell = 1; cell < this.right.length; cell += 1) {
      if (this.across[cell] !== 0) this.join(cell, 1, this.across[cell] as number);
      if (this.along[cell] !== 0) this.join(cell, layers, this.along[cell] as number);
    }
  }

  /** Conduction to the neighbour `back` cells before, with the harmonic mean of the conductivities. */
  private join(cell: number, back: number, shape: number): void {
    const width = this.grid.layers + 1;
    const a = this.conductivity[cell] as number;
    const b = this.conductivity[cell - back] as number;
    const flow = (shape * 2 * a * b) / (a + b);
    const [here, there] = [cell * width, (cell - back) * width];
    this.bands[here] = (this.bands[here] as number) + flow;
    this.bands[there] = (this.bands[there] as number) + flow;
    // With one layer both neighbours would share a band; sum, so that nothing is overwritten.
    this.bands[here + back] = (this.bands[here + back] as number) - flow;
  }

  private fillToBath(guess: Float64Array, stage: Stage): void {
    const width = this.grid.layers + 1;
    this.surfaces(guess, stage);
    for (let cell = 0; cell < guess.length; cell += 1) {
      const heat = this.toBath[cell] as number;
      if (heat === 0) continue;
      this.bands[cell * width] = (this.bands[cell * width] as number) + heat;
      this.right[cell] = (this.right[cell] as number) + heat * stage.coefficient.bathC;
    }
  }

  private addFlank(column: number, temperature: Float64Array, stage: Stage): void {
    const { layers, half, flank } = this.grid;
    const depth = (half[column] as number) / layers / 2;
    const cell = column * layers + layers - 1;
    this.addSurface(cell, flank, depth, this.coat.flank[column] as number, temperature, stage);
  }

  private addEnd(cell: number, end: number, coat: number, temperature: Float64Array, stage: Stage): void {
    const { layers, dx, border } = this.grid;
    this.addSurface(cell, (border[end] as number) / layers, dx / 2, coat, temperature, stage);
  }

  private addSurface(
    cell: number,
    area: number,
    depth: number,
    coat: number,
    temperature: Float64Array,
    { coefficient, factor }: Stage,
  ): void {
    const resistance = depth / (this.conductivity[cell] as number) + coat;
    const each = transmission(temperature[cell] as number, resistance, coefficient, factor);
    this.toBath[cell] = (this.toBath[cell] as number) + area * each;
  }
}
