import { describe, expect, it } from "vitest";
import { QUENCHED_HRC } from "../../src/functions/hardening";
import {
  ANALYSIS,
  BILLET_CARBON,
  CARBON,
  CERTIFICATE,
  DECODE,
  EVEN_OUT,
  NEAREST_GRADES,
  STAINLESS,
} from "../../src/functions/steel";
import { TEMPERED_HRC } from "../../src/functions/tempering";
import { answer } from "./answer";

describe("DECODE and NEAREST_GRADES", () => {
  it("say what was decoded, and what the standard sets where it is known", () => {
    // GB/T 1299: Cr12 has C 2.00-2.30; its name has no carbon figure.
    const [carbon, chromium] = answer(DECODE, "Cr12");
    expect(carbon).toEqual([
      "C",
      "",
      expect.stringContaining("about 1 % or more; decoded from the name; GB/T 1299"),
    ]);
    expect(chromium?.slice(0, 2)).toEqual(["Cr", 12]);
    expect(answer(DECODE, 1095)[0]?.[2]).toBe(
      '"95" of 1095: last two digits, hundredths of a percent; decoded from the name; SAE J403; ASTM A29/A576 sets 0.90 to 1.03 %',
    );
    expect(answer(DECODE, "4137")[0]?.[2]).toContain("ranges at this carbon are about 0.07 % wide");
    expect(answer(DECODE, "S355")[0]?.[0]).toContain("#N/A");
    expect(answer(DECODE, null)).toEqual([[""]]);
  });

  it("tell an unknown name that its rule can still be read", () => {
    expect(answer(CARBON, "4137")[0]?.[0]).toContain("its name alone says C 0.37 (DECODE)");
  });

  it("show the element that differs most", () => {
    const row = answer(NEAREST_GRADES, "D2").find(([name]) => name === "SKD11");
    expect(row?.slice(1, 3)).toEqual(["JIS", "V"]);
    expect(answer(NEAREST_GRADES, "D22")[0]?.[0]).toContain("#N/A");
  });
});

describe("CERTIFICATE", () => {
  it("keeps the order of the certificate, then what is missing, then the verdict", () => {
    const rows = answer(CERTIFICATE, "O1", [["Mn"], ["C"], [""]], [[1.2], ["0,93"], [""]]);
    expect(rows.map(([element]) => element)).toEqual([
      "Mn",
      "C",
      "Si",
      "P",
      "S",
      "Cr",
      "Ni",

      "V",
      "W",
      "Cu",
      "verdict",
    ]);
    expect(rows[rows.length - 1]?.[4]).toContain("incomplete: Si, P, S, Cr");
  });

  it.each([
    [["1075", [["C", "Mn"]], [[0.7]]], "ranges of equal length"],
    [["1075", [["C", "Xx"]], [[0.7, 0.1]]], '"Xx" is not an element used here'],
    [["1075", [["C", "Mn"]], [[60, 0.5]]], "was 0.6 meant"],
    [["1075", [["C"]], [[0.7]], "ladle"], 'kind "ladle" given'],
    [["D2", [["C"]], [[1.5]], "product"], "#N/A no permissible variation"],
  ])("%j: %s", (given, sentence) => {
    expect(answer(CERTIFICATE, ...given)[0]?.[0]).toContain(sentence);
  });

  it("passed on as an analysis drives hardening and tempering as its grade does, shifted with its carbon", () => {
    const elements = [["C"], ["Si"], ["Mn"]];
    const [[analysis]] = answer(ANALYSIS, elements, [[0.73], [0.22], [0.55]]) as [[string]];
    expect(answer(CARBON, analysis)).toEqual([[0.73]]);
    const [[asGrade], [asCertificate]] = answer(TEMPERED_HRC, [["1075"], [analysis]], 200) as [
      [number],
      [number],
    ];
    expect(Math.abs(asCertificate - asGrade)).toBeLessThan(2);
    expect(answer(QUENCHED_HRC, analysis)[0]?.[0]).toBeGreaterThan(60);
  });
});

describe("STAINLESS, BILLET_CARBON and EVEN_OUT", () => {
  it("answer a column, one row spoilt at a time", () => {
    const [good, bad] = answer(STAINLESS, [["440C"], ["A22"]], 1040);
    expect(good?.slice(0, 2)).toEqual([17, 12]);
    expect(bad?.[0]).toContain("#N/A");
    expect(bad?.[3]).toBe("");
    expect(
      answer(EVEN_OUT, [[0.25], [0.5]], 1100)
        .flat()
        .every((value) => typeof value === "number"),
    ).toBe(true);
  });

  it("refuse slips", () => {
    expect(answer(BILLET_CARBON, [[95, 75]], [[3, 1]])[0]?.[0]).toContain("was 0.95 meant?");
    expect(answer(BILLET_CARBON, [[0.95, ""]], [[3, 1]])[0]?.[0]).toContain("cell 2 is empty");
    expect(answer(EVEN_OUT, 0.25, 700)[0]?.[0]).toContain("#N/A temperature 700 °C (1292 °F) is outside");
  });
});
