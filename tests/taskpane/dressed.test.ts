import { afterEach, describe, expect, test } from "vitest";
import { functionNamed } from "../../src/functions/catalogue";
import { customFunction } from "../../src/host/custom-function";

/** An Excel that knows the sets of custom functions up to 1.x; without a number, none is around. */
function play(newest: number | undefined): void {
  const isSetSupported = (name: string, set: string) =>
    name === "CustomFunctionsRuntime" && Number(set.split(".")[1]) <= (newest ?? 0);
  Object.assign(globalThis, {
    Office: newest === undefined ? undefined : { context: { requirements: { isSetSupported } } },
  });
}

afterEach(() => play(undefined));

function answer(name: string, ...given: readonly unknown[]): unknown {
  const fn = functionNamed(name);
  if (fn === undefined) throw new Error(name);
  return customFunction(fn)(...given);
}

describe("figures with a number format", () => {
  test("money, hardness, lengths and temperatures bring theirs where Excel takes it", () => {
    play(4);
    // By hand: 193.62 / (1 − 0.35) = 297.876…
    expect(answer("PRICE_AT_MARGIN", 193.62, 0.35)).toEqual([
      [{ type: "FormattedNumber", basicValue: expect.closeTo(297.877, 3), numberFormat: "#,##0.00" }],
    ]);
    const row = (answer("TEMPERED_RANGE", "1095", 205) as unknown[][])[0] ?? [];
    expect(row.slice(0, 3)).toEqual(
      Array.from({ length: 3 }, () =>
        expect.objectContaining({ type: "FormattedNumber", numberFormat: "0" }),
      ),
    );
    // Words stay words.
    expect(typeof row[3]).toBe("string");
  });

  test("an older Excel, and one that tells nothing, get the plain figure", () => {
    for (const newest of [3, undefined]) {
      play(newest);
      expect(answer("CARBON", "1095")).toEqual([[0.95]]);
      expect(typeof (answer("PRICE_AT_MARGIN", 193.62, 0.35) as unknown[][])[0]?.[0]).toBe("number");
    }
  });

  test("a large answer stays plain, and a dressed figure goes back in as the figure it is", () => {
    play(4);
    const many = Array.from({ length: 501 }, () => [100]);
    expect(
      (answer("PRICE_AT_MARGIN", many, 0.35) as unknown[][]).flat().every((cell) => typeof cell === "number"),
    ).toBe(true);
    const given = [[{ type: "FormattedNumber", basicValue: 193.62, numberFormat: "#,##0.00" }]];
    expect(answer("PRICE_AT_MARGIN", given, 0.35)).toEqual(answer("PRICE_AT_MARGIN", 193.62, 0.35));
  });
});
