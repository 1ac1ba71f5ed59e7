import type { Formula } from "./formula";

/** Formulas that are due in a calculation; those come first of which fewer lie one behind the other below them. */
export class DueFormulas {
  private readonly byHeight: Formula[][] = [];
  /** How many of each height were taken. */
  private readonly taken: number[] = [];
  private height = 0;

  add(formula: Formula): void {
    const { height } = formula;
    const alike = this.byHeight[height];
    if (alike === undefined) this.byHeight[height] = [formula];
    else alike.push(formula);
    this.height = Math.min(this.height, height);
  }

  /** The next of them that is still due. */
  next(): Formula | undefined {
    while (this.height < this.byHeight.length) {
      const formula = this.take();
      if (formula === undefined) this.height += 1;
      // One that was lifted since it was added waits for its place.
      else if (formula.height > this.height) this.add(formula);
      else if (formula.state !== "done") return formula;
    }
    return undefined;
  }

  private take(): Formula | undefined {
    const at = this.taken[this.height] ?? 0;
    const formula = this.byHeight[this.height]?.[at];
    if (formula !== undefined) this.taken[this.height] = at + 1;
    return formula;
  }
}
