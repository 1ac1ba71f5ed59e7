import { describe, expect, it } from "vitest";
import { isHardnessSpan, readHardness } from "../../src/core/hardness/read-hardness";
import { InvalidValue, NotAvailable } from "../../src/core/refusal";

// What a requirement says is common practice of drawings, no source; minus and plus are worked by hand.

describe("forms of a requirement", () => {
  it.each([
    ["one figure", "59", [59, 59, 59]],
    ["a decimal", "59.5", [59.5, 59.5, 59.5]],
    ["a decimal comma", "59,5", [59.5, 59.5, 59.5]],
    ["blanks and line ends about it", " \n59\t", [59, 59, 59]],
    ["a span", "58-60", [58, 59, 60]],
    ["a span with blanks", "58  -  60", [58, 59, 60]],
    ["an uneven span", "57-60", [57, 58.5, 60]],
    ["decimal commas at both ends", "58,5-60,5", [58.5, 59.5, 60.5]],
    ["a hyphen of its own", "58‐60", [58, 59, 60]],
    ["an en dash", "58–60", [58, 59, 60]],
    ["an em dash", "58 — 60", [58, 59, 60]],
    ["a minus sign", "58−60", [58, 59, 60]],
    ["full-width letters of an East Asian keyboard", "５８－６０", [58, 59, 60]],
    ["to", "58 to 60", [58, 59, 60]],
    ["to in capitals", "58 TO 60", [58, 59, 60]],
    ["two dots", "58..60", [58, 59, 60]],
    ["both ends the same", "60-60", [60, 60, 60]],
    ["plus or minus", "60 ±1", [59, 60, 61]],
    ["plus or minus, close", "60±1.5", [58.5, 60, 61.5]],
    ["plus or minus in ASCII", "60 +-1", [59, 60, 61]],
    ["plus or minus with a stroke", "60 +/- 1", [59, 60, 61]],
    ["uneven limits", "60 +1/-2", [58, 60, 61]],
    ["uneven limits, close", "60+1-2", [58, 60, 61]],
    ["uneven limits with a comma", "60 +1, -2", [58, 60, 61]],
    ["uneven limits set wide", "60 + 1 / - 2", [58, 60, 61]],
    ["a limit of nothing", "60 +2/-0", [60, 60, 62]],
  ])("%s: %j", (_, given, [low, aim, high]) => {
    expect(readHardness(given)).toEqual({ low, aim, high });
  });

  it.each([
    "HRC 58-60",
    "58-60 HRC",
    "58-60HRC",
    "58HRC-60HRC",
    "58 hrc to 60 hrc",
    "Rc 58-60",
    "58-60 Rc",
    "58-60rc",
  ])("the scale may stand where it likes: %j", (given) => {
    expect(readHardness(given)).toEqual({ low: 58, aim: 59, high: 60 });
  });

  it("Rockwell C in words, and a number that is none of text", () => {
    expect(readHardness("60 Rockwell C").aim).toBe(60);
    expect(readHardness(59)).toEqual({ low: 59, aim: 59, high: 59 });
    expect(readHardness(59.5).aim).toBe(59.5);
  });
});

describe("the span of the scale, both ends included", () => {
  it.each([20, 68, "20-68", "21 ±1", "67 +1/-2"])("%j is taken", (given) => {
    expect(readHardness(given).low).toBeGreaterThanOrEqual(20);
    expect(readHardness(given).high).toBeLessThanOrEqual(68);
  });

  it.each([
    [19.9, "19.9"],
    [68.1, "68.1"],
    ["19-60", "19"],
    ["60-69", "69"],
    ["19-69", "19"],
    ["20 ±1", "19"],
    ["68 +1/-2", "69"],
    ["123456789", "1.23457e+8"],
    [19_999, "19999"],
  ])("%j is not", (given, reached) => {
    const said = `"${given}" reaches ${Number(reached)} HRC, outside 20 to 68 HRC, the span of the Rockwell C scale in use`;
    expect(() => readHardness(given)).toThrow(NotAvailable);
    expect(() => readHardness(given)).toThrow(said);
  });
});

describe("what is no requirement", () => {
  it.each([20_000, 45_144])("%d is a day of the calendar, which a span typed bare turns into", (given) => {
    expect(() => readHardness(given)).toThrow(InvalidValue);
    expect(() => readHardness(given)).toThrow(`${given} looks like a date: a span was typed without quotes`);
  });

  it("the same figures as text are no day", () => {
    expect(() => readHardness("45144")).toThrow(NotAvailable);
  });

  it("the higher end first", () => {
    expect(() => readHardness("60-58")).toThrow(InvalidValue);
    expect(() => readHardness("60-58")).toThrow('"60-58" gives the higher end first: write low to high');
    // Both faults: the order is told first.
    expect(() => readHardness("69-19")).toThrow("gives the higher end first");
  });

  it.each([
    "700 HV",
    "700HV",
    "700 hv10",
    "240 HB",
    "240 HBW",
    "81 HRA",
    "98 HRB",
    "98HRB",
    "70 HRD",
    "89 HR15N",
    "66 HR45N",
  ])("another scale of hardness: %j", (given) => {
    expect(() => readHardness(given)).toThrow(InvalidValue);
    expect(() => readHardness(given)).toThrow(
      `"${given}" is not in Rockwell C: convert it with HARDNESS first`,
    );
  });

  it.each(["1290 MPa", "1290MPa", "1290 N/mm2", "1290 N/mm²"])("a strength: %j", (given) => {
    expect(() => readHardness(given)).toThrow("is not in Rockwell C: convert it with HARDNESS first");
  });

  it.each([
    "min 58",
    "58 min",
    "MAX 60",
    "from 58",
    "under 60",
    "over 58",
    "at least 58",
    "at most 60",
    "<60",
    "> 58",
    "≥58",
    "≤ 60",
  ])("one end only: %j", (given) => {
    expect(() => readHardness(given)).toThrow(InvalidValue);
    expect(() => readHardness(given)).toThrow(
      `"${given}" gives one end only: state both, for example "58-60", "60 ±1", "60 +1/-2" or "59"`,
    );
  });

  it.each([
    "hard",
    "",
    "58-",
    "-58",
    "58-60-62",
    "58/60",
    "60 ±",
    "60 + 1",
    "about 60",
    "60 soft",
    "1234567890",
  ])("anything else: %j", (given) => {
    expect(() => readHardness(given)).toThrow(InvalidValue);
    expect(() => readHardness(given)).toThrow(`"${given}" is not a hardness: give for example`);
  });
});

describe("isHardnessSpan", () => {
  it.each(["58-60", "58 to 60", "60 ±1", "60 +1/-2", "60 +0/-2", "60-58", " 58–60 HRC "])(
    "%j is one",
    (given) => {
      expect(isHardnessSpan(given)).toBe(true);
    },
  );

  it.each(["59", "60-60", "60 ±0", "hard", "", "700 HV", "min 58"])("%j is none", (given) => {
    expect(isHardnessSpan(given)).toBe(false);
  });
});
