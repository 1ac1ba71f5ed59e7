import { afterEach, describe, expect, test } from "vitest";
import { functionNamed } from "../../src/functions/catalogue";
import { customFunction } from "../../src/host/custom-function";

/** An Excel that knows one kind of sets up to 1.x, that of custom functions unless said; without a number, none is around. */
function play(newest: number | undefined, kind = "CustomFunctionsRuntime"): void {
  const isSetSupported = (name: string, set: string) =>
    name === kind && Number(set.split(".")[1]) <= (newest ?? 0);
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

describe("cards", () => {
  // On a busy machine the first answer takes longer than a slice and comes as a promise.
  const rowsOf = async (...given: readonly unknown[]) => (await answer("STEEL", ...given)) as unknown[][];
  const rowOf = async (...given: readonly unknown[]) => (await rowsOf(...given))[0] ?? [];

  test("of a steel stand in its designation where Excel has them and they are asked for", async () => {
    play(19, "ExcelApi");
    const [name, ...rest] = await rowOf([["T30402"]], [["card"]]);
    // D2 by ASTM A681: 1.40 to 1.60 % C, 11.0 to 13.0 % Cr.
    expect(name).toMatchObject({
      type: "String",
      basicType: "String",
      basicValue: "D2",
      properties: {
        standard: { type: "String", basicValue: "ASTM A681" },
        "C low mass %": { type: "Double", basicValue: 1.4 },
        "Cr high mass %": { type: "Double", basicValue: 13 },
      },
    });
    // D2 has no EN number of its own: a card has no empty line.
    expect(Object.keys((name as { properties: object }).properties)).not.toContain("EN number");
    expect(rest).toEqual((await rowOf([["T30402"]])).slice(1));
    expect((await rowOf([["T30402"]]))[0]).toBe("D2");
  });

  test("are plain words in an older Excel, and in bulk", async () => {
    play(18, "ExcelApi");
    expect((await rowOf("T30402", "card"))[0]).toBe("D2");
    play(19, "ExcelApi");
    const many = Array.from({ length: 21 }, () => ["D2"]);
    const rows = await rowsOf(many, [["card"]]);
    expect(rows.every(([name]) => name === "D2")).toBe(true);
    expect((await rowsOf(many.slice(1), [["card"]]))[19]?.[0]).toMatchObject({
      basicValue: "D2",
    });
  });

  test("go back in as the steel that they name, and a refusal has none", async () => {
    play(19, "ExcelApi");
    const [card] = await rowOf("D2", "card");
    expect(await answer("CARBON", [[card]])).toEqual(await answer("CARBON", "D2"));
    const rows = await rowsOf([["D2"], ["unheard of"]], "card");
    expect(rows[0]?.[0]).toMatchObject({ basicValue: "D2" });
    expect(rows[1]?.[0]).toBe("");
  });
});
