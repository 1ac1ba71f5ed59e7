/** Keeps the work of a search within a limit that is the same on every machine, unlike a clock. */
export class Effort {
  private left: number;

  /** @param limit - Work allowed, in cells of the knapsack table. */
  constructor(limit: number) {
    this.left = limit;
  }

  /** Takes an amount of work off the account. */
  spend(amount: number): void {
    this.left -= amount;
  }

  get isSpent(): boolean {
    return this.left <= 0;
  }
}
