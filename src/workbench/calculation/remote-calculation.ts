import type { Answer, HeldCell, HeldWorkbook, Order } from "./messages";

type OrderWithoutNumber = Order extends infer One ? (One extends Order ? Omit<One, "number"> : never) : never;

/** The calculation of the workbook, which a worker of its own does beside the page. */
export class RemoteCalculation {
  private readonly worker = new Worker("calculation.js");
  private number = 0;

  /** @param answered - Told of every result; messages with a number after the answer's are not in it yet. */
  constructor(answered: (answer: Answer) => void, failed: (reason: string) => void) {
    this.worker.addEventListener("message", ({ data }: MessageEvent<Answer>) => answered(data));
    this.worker.addEventListener("error", ({ message }) => failed(message));
  }

  /** Calculates another workbook. @returns The number of the message. */
  load(workbook: HeldWorkbook): number {
    return this.send({ kind: "load", workbook });
  }

  /** Tells what cells of a sheet hold from now on. @returns The number of the message. */
  change(sheet: string, cells: readonly HeldCell[]): number {
    return this.send({ kind: "change", sheet, cells });
  }

  private send(order: OrderWithoutNumber): number {
    this.number += 1;
    this.worker.postMessage({ ...order, number: this.number });
    return this.number;
  }
}
