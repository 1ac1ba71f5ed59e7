import { type Coat, SectionEquations, type Stage } from "./section-equations";
import type { SectionGrid } from "./section-grid";
import type { PearliteCells } from "./section-pearlite";
import { meanHeatCapacity, type SectionSteel } from "./section-steel";

export interface SectionProblem {
  readonly grid: SectionGrid;
  readonly steel: SectionSteel;
  readonly coat: Coat;
  readonly startC: number;
  readonly stages: readonly Stage[];
  /** Left out: no transformation. */
  readonly pearlite?: PearliteCells;
  /** Heat set free by pearlite, J/kg. */
  readonly latentJkg: number;
  /** Largest change of temperature aimed at in one step, °C. */
  readonly stepC: number;
}

/** Books of heat, J a metre of half a blade. */
export interface HeatBalance {
  lost: number;
  latent: number;
  stored: number;
}

const MAX_GROWTH = 1.6;
const MIN_GROWTH = 0.3;
const INSTANT = 1e-9;

/**
 * A section on its way down: implicit finite volumes in steps that follow the rate of cooling. The
 * properties of a step are those of the temperatures that the step before leads to expect; a second
 * pass moved the hardened depth by under 0.01 mm.
 */
export class SectionCooling {
  readonly temperature: Float64Array;
  readonly balance: HeatBalance = { lost: 0, latent: 0, stored: 0 };
  seconds = 0;
  steps = 0;
  private readonly equations: SectionEquations;
  private readonly guess: Float64Array;
  private readonly rate: Float64Array;
  private readonly heat: Float64Array;
  /** Heat booked with a heat capacity that the solution then changed; the next step makes it good. */
  private readonly owed: Float64Array;
  private step = 0;

  constructor(private readonly problem: SectionProblem) {
    const { grid, steel, coat, startC } = problem;
    const cells = grid.columns * grid.layers;
    this.equations = new SectionEquations(grid, steel, coat);
    this.temperature = new Float64Array(cells).fill(startC);
    this.guess = new Float64Array(cells);
    this.rate = new Float64Array(cells);
    this.heat = new Float64Array(cells);
    this.owed = new Float64Array(cells);
  }

  /** True once no place can transform any more. */
  isDone(): boolean {
    const { pearlite } = this.problem;
    if (pearlite === undefined) return false;
    for (let cell = 0; cell < this.temperature.length; cell += 1) {
      if (!pearlite.isDone(cell, this.temperature[cell] as number)) return false;
    }
    return true;
  }

  /** Cools until a time, or until nothing can transform any more. */
  run(untilS: number): void {
    while (this.seconds < untilS - INSTANT && !this.isDone()) this.advance(untilS);
  }

  private stage(): Stage {
    const { stages } = this.problem;
    const current = stages.find(({ untilS }) => this.seconds < untilS - INSTANT);
    return current ?? (stages[stages.length - 1] as Stage);
  }

  private advance(untilS: number): void {
    const stage = this.stage();
    if (this.step === 0) this.start(stage);
    const dt = Math.min(this.step, untilS - this.seconds, stage.untilS - this.seconds);
    this.transform(dt);
    for (let cell = 0; cell < this.guess.length; cell += 1) {
      this.guess[cell] = (this.temperature[cell] as number) + dt * (this.rate[cell] as number);
    }
    this.equations.solve(this.temperature, this.guess, this.heat, dt, stage);
    const change = this.takeOver(dt, stage);
    this.seconds += dt;
    this.steps += 1;
    const growth = this.problem.stepC / Math.max(change, INSTANT);
    this.step = dt * Math.min(MAX_GROWTH, Math.max(MIN_GROWTH, growth));
    if (stage.untilS - this.seconds < INSTANT) this.step = 0;
  }

  /** First step into new surroundings: the fastest cell moves by the step aimed at. */
  private start(stage: Stage): void {
    const { toBath, mass } = this.equations;
    this.rate.fill(0);
    this.equations.conduct(this.temperature);
    this.equations.surfaces(this.temperature, stage);
    let fastest = INSTANT;
    for (let cell = 0; cell < toBath.length; cell += 1) {
      const celsius = this.temperature[cell] as number;
      const store = (mass[cell] as number) * this.problem.steel.heatCapacity(celsius);
      const rate = ((toBath[cell] as number) * Math.abs(celsius - stage.coefficient.bathC)) / store;
      fastest = Math.max(fastest, rate);
    }
    this.step = this.problem.stepC / fastest;
  }

  /** New pearlite at the temperature expected half-way through the step, and the heat it sets free. */
  private transform(dt: number): void {
    const { pearlite, latentJkg } = this.problem;
    let booked = 0;
    for (let cell = 0; cell < this.heat.length; cell += 1) {
      const middle = (this.temperature[cell] as number) + 0.5 * dt * (this.rate[cell] as number);
      const formed = pearlite === undefined ? 0 : pearlite.advance(cell, middle, dt);
      const latent = formed * latentJkg * (this.equations.mass[cell] as number);
      this.heat[cell] = latent + (this.owed[cell] as number);
      booked += latent;
    }
    this.balance.latent += booked;
  }

  /** Takes the solution over and books its heat; gives the largest change of temperature. */
  private takeOver(dt: number, { coefficient }: Stage): number {
    const { store, mass, toBath } = this.equations;
    let [largest, stored, lost] = [0, 0, 0];
    for (let cell = 0; cell < this.guess.length; cell += 1) {
      const old = this.temperature[cell] as number;
      const now = this.guess[cell] as number;
      const kept = (mass[cell] as number) * meanHeatCapacity(this.problem.steel, old, now) * (now - old);
      this.owed[cell] = (store[cell] as number) * (now - old) - kept;
      stored += kept;
      lost += dt * (toBath[cell] as number) * (now - coefficient.bathC);
      this.rate[cell] = (now - old) / dt;
      this.temperature[cell] = now;
      largest = Math.max(largest, Math.abs(now - old));
    }
    this.balance.stored += stored;
    this.balance.lost += lost;
    return largest;
  }
}
