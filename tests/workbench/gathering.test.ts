import { createRequire } from "node:module";
import * as rxjs from "rxjs";
import { afterEach, beforeEach, expect, test, vi } from "vitest";

const { gatherWhenNeeded } = createRequire(import.meta.url)("../../src/workbench/serve/grid-vendor.cjs") as {
  gatherWhenNeeded(rxjs: object): void;
};

type Gathering = Pick<typeof rxjs, "bufferTime">;

/** The published package as a browser has it, an object whose members may be replaced. */
function gathering(): Gathering & { readonly operators: Gathering } {
  const published = { ...rxjs, operators: { bufferTime: rxjs.bufferTime } };
  gatherWhenNeeded(published);
  return published;
}

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

test("no timer is set while no value comes, from either place that packages take it from", () => {
  for (const { bufferTime } of [gathering(), gathering().operators]) {
    const subscription = new rxjs.Subject<number>().pipe(bufferTime(16)).subscribe();
    expect(vi.getTimerCount()).toBe(0);
    subscription.unsubscribe();
  }
  // As published there is one: without it, this would prove nothing.
  const published = new rxjs.Subject<number>().pipe(rxjs.bufferTime(16)).subscribe();
  expect(vi.getTimerCount()).toBe(1);
  published.unsubscribe();
});

test("values of one time come together, in their order, and the timer rests again", () => {
  const source = new rxjs.Subject<number>();
  const given: number[][] = [];
  source.pipe(gathering().bufferTime(16)).subscribe((values) => given.push(values));
  for (const value of [1, 2, 3]) source.next(value);
  expect(given).toEqual([]);
  vi.advanceTimersByTime(16);
  expect(given).toEqual([[1, 2, 3]]);
  expect(vi.getTimerCount()).toBe(0);
  source.next(4);
  vi.advanceTimersByTime(16);
  expect(given).toEqual([[1, 2, 3], [4]]);
});

test("what is gathered comes before the end; a fault passes; who leaves hears nothing more", () => {
  const { bufferTime } = gathering();
  const heard: unknown[] = [];
  const hear = (source: rxjs.Observable<number>) =>
    source.pipe(bufferTime(16)).subscribe({
      next: (values) => heard.push(values),
      error: (fault) => heard.push(fault),
      complete: () => heard.push("end"),
    });
  hear(rxjs.of(1, 2));
  expect(heard.splice(0)).toEqual([[1, 2], "end"]);
  hear(rxjs.throwError(() => "fault"));
  expect(heard.splice(0)).toEqual(["fault"]);
  const source = new rxjs.Subject<number>();
  const subscription = hear(source);
  source.next(1);
  subscription.unsubscribe();
  vi.advanceTimersByTime(100);
  expect(heard).toEqual([]);
  expect(vi.getTimerCount()).toBe(0);
});

test("asked for more than a time it stays as published", () => {
  const source = new rxjs.Subject<number>();
  const given: number[][] = [];
  source.pipe(gathering().bufferTime(16, null, 2)).subscribe((values) => given.push(values));
  for (const value of [1, 2, 3]) source.next(value);
  expect(given).toEqual([[1, 2]]);
});
