import { existsSync } from "node:fs";
import { Dispatcher } from "../host/dispatcher";
import type { BenchLine } from "./line";
import { median } from "./measure";

const CALLS = 10_000;

async function elapsed(dispatcher: Dispatcher, id: string, args: readonly unknown[]): Promise<number> {
  const start = performance.now();
  const outcomes = await dispatcher.call(Array.from({ length: CALLS }, () => ({ id, args })));
  if (outcomes.some(({ ok }) => !ok)) throw new Error(`${id} failed in the dispatcher`);
  return performance.now() - start;
}

/** Single calls through the vendor's own dispatcher, beside a function of the same arguments that does nothing. */
export async function besideEmptyFunction(): Promise<BenchLine[]> {
  const what = `${CALLS} single calls through the vendor's dispatcher, beside an empty function`;
  if (!existsSync("dist/functions.js"))
    throw new Error("there is no dist/functions.js: run npm run build first");
  const dispatcher = new Dispatcher("dist");
  dispatcher.define("EMPTY", "() => [[1]]");
  const args = [[["1095"]], [[205]], null, null, null, null, null];
  const ratios: number[] = [];
  for (let turn = 0; turn < 7; turn += 1) {
    const empty = await elapsed(dispatcher, "EMPTY", args);
    const ours = await elapsed(dispatcher, "TEMPERED_HRC", args);
    if (turn > 1) ratios.push(ours / empty);
  }
  return [{ what, value: median(ratios), unit: "×", budget: 2 }];
}
