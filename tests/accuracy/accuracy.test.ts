import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { ALL_SOURCES, readTable, sourcesOf, tablePaths } from "./checks";
import { dataFiles, frozenDataFiles } from "./data-files";
import { FIT_SOURCES, UNFITTED_SOURCES } from "./fit-sources";
import { faults, readCeilings } from "./frozen";
import { MEASURED, type Measured } from "./measured";
import { ACCURACY_PAGES, withAccuracy } from "./report";
import { shareOf, spread } from "./statistics";

describe("published tables", () => {
  test("none got worse, none lost a row, none vanished", () => {
    expect(faults(MEASURED)).toEqual([]);
  });

  test("at least ten sources serve checks only", () => {
    const used = new Set(tablePaths().flatMap((path) => sourcesOf(readTable(path))));
    const own = tablePaths()
      .filter((path) => path.includes("/accuracy/"))
      .flatMap((path) => sourcesOf(readTable(path)));
    expect(new Set(own).size).toBeGreaterThanOrEqual(10);
    for (const source of used) expect(Object.keys(ALL_SOURCES)).toContain(source);
  });

  test("at least thirty sources that were read took no part in any fit", () => {
    const read = [...UNFITTED_SOURCES].filter(([, how]) => how === "READ");
    expect(read.length).toBeGreaterThanOrEqual(30);
    // Of each kind of fit one that did take part, as the files of the fits say.
    for (const key of [
      "hollomon-jaffe-1945",
      "open-materials-table",
      "chinese-tempering-tables",
      "crucible-d2",
    ])
      expect(FIT_SOURCES.has(key), key).toBe(true);
    for (const key of UNFITTED_SOURCES.keys()) expect(FIT_SOURCES.has(key), key).toBe(false);
  });

  test("a stated band holds nine in ten of the rows of its quantity that no fit used", () => {
    const held = new Map<string, (boolean | undefined)[]>();
    for (const one of MEASURED.filter(({ fitted }) => !fitted))
      held.set(one.quantity, [...(held.get(one.quantity) ?? []), ...one.held]);
    const shares = [...held].map(([quantity, list]) => [quantity, shareOf(list)] as const);
    expect(shares.filter(([, share]) => share !== undefined).length).toBeGreaterThan(20);
    expect(shares.filter(([, share]) => share !== undefined && share < 0.9)).toEqual([]);
  });

  test.each(Object.keys(ACCURACY_PAGES))("the table in %s is the one that the figures give", (path) => {
    const page = readFileSync(path, "utf8");
    expect(withAccuracy(path, page)).toBe(page);
  });
});

describe("the guard itself", () => {
  const [first] = MEASURED as readonly [Measured, ...Measured[]];
  const frozen = { [first.key]: { rows: first.errors.length, mean: 1, rms: 1, largest: 1 } };
  const with_ = (errors: readonly number[]) => faults([{ ...first, errors }], frozen);

  test("sees a row dropped, an answer lost, a miss too large, a table gone or new", () => {
    const fine = first.errors.map(() => 0.5);
    expect(with_(fine)).toEqual([]);
    expect(with_(fine.slice(1))).toEqual([`${first.key}: 1 of ${fine.length} rows dropped`]);
    expect(with_([...fine.slice(1), Number.NaN])).toEqual([`${first.key}: a row has no answer`]);
    expect(with_([...fine.slice(1), 1.1])).toEqual([`${first.key}: largest 1.1 is over 1`]);
    expect(faults([], frozen)).toEqual([`${first.key}: no longer measured`]);
    expect(faults([first], {})).toEqual([`${first.key}: not frozen yet`]);
  });

  test("statistics by hand: errors 3, -4, 1", () => {
    const { bias, meanSize, rms, largest, largestAt } = spread([3, -4, 1]);
    expect([bias, largest, largestAt]).toEqual([0, 4, 1]);
    expect(meanSize).toBeCloseTo(8 / 3, 12);
    expect(rms).toBeCloseTo(Math.sqrt(26 / 3), 12);
    expect(shareOf([true, false, undefined])).toBe(0.5);
    expect(shareOf([undefined])).toBeUndefined();
  });

  test("ceilings are frozen for every table, and no more", () => {
    expect(Object.keys(readCeilings()).sort()).toEqual(MEASURED.map(({ key }) => key).sort());
  });
});

test("data files hold the rows and the column sums that are frozen", () => {
  expect(dataFiles()).toEqual(frozenDataFiles());
});
