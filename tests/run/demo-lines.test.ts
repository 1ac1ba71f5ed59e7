import { describe, expect, test } from "vitest";
import { TREATMENT } from "../../src/functions/run";
import { demoRun } from "../../src/workbook/sheets/run-r07/run";
import { answer } from "../steel/answer";

/** What the sheet of the lines shows of the treatment of a line, as a smith reads it from left to right. */
const SHOWN = ["band status", "chance", "temper C", "through-hardens", "do next", "be wary of"] as const;

function read(line: string): readonly unknown[] {
  const found = demoRun.lines.find((each) => each.line === line);
  if (found === undefined) throw new RangeError(line);
  const { steel, use, aim, quench, thickness, length } = found;
  const [row = []] = answer(TREATMENT, steel, use, aim, quench, thickness, length);
  return SHOWN.map((label) => row[TREATMENT.result.findIndex((column) => column.label === label)]);
}

describe("the six lines of the invented run, as a smith reads them", () => {
  test.each([
    [
      "L1",
      [
        "likely inside",
        0.7,
        182,
        "hardens through",
        "Temper one, 1 × 2 h at 182 °C (360 °F)",
        "hardness by estimate",
      ],
    ],
    [
      "L2",
      [
        "uncertain",
        0.55,
        249,
        "hardens through",
        "Temper one, 1 × 2 h at 249 °C (480 °F)",
        "brittle range; it matters less where nothing is struck (2 more)",
      ],
    ],
    [
      "L3",
      [
        "inside",
        0.96,
        378,
        "hardens through",
        "Temper one, 1 × 2 h at 378 °C (712 °F)",
        "may crack or warp in fast oil (2 more)",
      ],
    ],
    [
      "L4",
      [
        "likely inside",
        0.79,
        264,
        "edge only",
        "Temper one, 1 × 2 h at 264 °C (507 °F), chance 79 % in the brittle range",
        "temper lies in the brittle range (2 more)",
      ],
    ],
    [
      "L5",
      [
        "likely inside",
        0.88,
        398,
        "hardens through",
        "Temper one, 1 × 2 h at 398 °C (748 °F), cool fast from it",
        "cool fast from the temper: slow cooling embrittles (1 more)",
      ],
    ],
    [
      "L6",
      [
        "likely inside",
        0.7,
        359,
        "hardens through",
        "Temper one, 1 × 2 h at 376 °C (709 °F), cool fast from it, chance 64 % and tougher",
        "temper lies in the brittle range (1 more)",
      ],
    ],
  ])("%s", (line, shown) => {
    expect(read(line)).toEqual(shown);
  });
});

describe("the same line with another target says why it stands differently", () => {
  const column = (label: string) => TREATMENT.result.findIndex((each) => each.label === label);

  // 60 HRC is the very end of the 60 to 64 that is usual in 52100; the demo aims at 62, its middle.
  test("L1 at 60 HRC is uncertain, not too soft, and is led to the temper of the band", () => {
    const [row = []] = answer(TREATMENT, "52100", "Chef knife thin hard", 60, "medium oil", 3, 346);
    expect([row[column("band status")], row[column("chance")]]).toEqual(["uncertain", 0.48]);
    expect(row[column("next step")]).toMatch(/182 °C \(360 °F\) would give the band at 70 %, this 48 %\.$/);
  });
});
