import { describe, expect, it } from "vitest";
import { NotAvailable } from "../../src/core/refusal";
import { decodeName } from "../../src/core/steel/decode/decode-name";
import { readName } from "../../src/core/steel/decode/forms";
import { allGrades } from "../../src/core/steel/grades";
import { bareName } from "../../src/core/steel/nominal-carbon";

/** Contents that a name states, "?" where it names an element without an amount. */
function contents(name: string): Record<string, number | "?"> {
  return Object.fromEntries(decodeName(name).parts.map(({ element, content }) => [element, content ?? "?"]));
}

describe("names read by the rule of their system", () => {
  // SAE J402 with the series of a bar mill handbook.
  it.each([
    ["1045", { C: 0.45 }],
    ["1084", { C: 0.84 }],
    ["1566", { C: 0.66, Mn: "?" }],
    ["15B62H", { C: 0.62, Mn: "?", B: "?" }],
    ["5160", { C: 0.6, Cr: "?" }],
    ["6150", { C: 0.5, Cr: "?", V: "?" }],
    ["8670", { C: 0.7, Ni: 0.55, Cr: 0.5, Mo: 0.2 }],
    ["9260", { C: 0.6, Si: "?" }],
    ["52100", { C: 1, Cr: 1.45 }],
    ["4137H", { C: 0.37, Cr: "?", Mo: "?" }],
    ["12L14", { C: 0.14, Pb: "?" }],
    ["UNS G10250", { C: 0.25 }],
    ["G52986", { C: 1, Cr: 1.45 }],
    ["G51601", { C: 0.6, Cr: "?", B: "?" }],
  ])("SAE %s", (name, stated) => {
    expect(contents(name)).toEqual(stated);
  });

  // EN 10027-1: factors 4 for Cr Mn Ni Si W, 10 for Mo V; whole percents after X and HS.
  it.each([
    ["C75S", { C: 0.75 }],
    ["Ck75", { C: 0.75 }],
    ["80CrV2", { C: 0.8, Cr: 0.5, V: "?" }],
    ["51CrV4", { C: 0.51, Cr: 1, V: "?" }],
    ["75Ni8", { C: 0.75, Ni: 2 }],
    ["15N20", { C: 0.75, Ni: 2 }],
    ["56SiCr7", { C: 0.56, Si: 1.75, Cr: "?" }],
    ["100Cr6", { C: 1, Cr: 1.5 }],
    ["90MnCrV8", { C: 0.9, Mn: 2, Cr: "?", V: "?" }],
    ["42CrMo4", { C: 0.42, Cr: 1, Mo: "?" }],
    ["142WV13", { C: 1.42, W: 3.25, V: "?" }],
    ["X46Cr13", { C: 0.46, Cr: 13 }],
    ["X50CrMoV15", { C: 0.5, Cr: 15, Mo: "?", V: "?" }],
    ["X153CrMoV12", { C: 1.53, Cr: 12, Mo: "?", V: "?" }],
    ["X40CrMoV5-1", { C: 0.4, Cr: 5, Mo: 1, V: "?" }],
    ["X210Cr12", { C: 2.1, Cr: 12 }],
    ["HS6-5-2", { C: "?", W: 6, Mo: 5, V: 2 }],
    ["EN X38CrMoV5-3", { C: 0.38, Cr: 5, Mo: 3, V: "?" }],
  ])("EN %s", (name, stated) => {
    expect(contents(name)).toEqual(stated);
  });

  // JIS G 4051, G 4401, G 4053; GB/T 221; GOST 1435, 4543, 5632, 5950, 801, 14959, 19265.
  it.each([
    ["S55C", { C: 0.55 }],
    ["SK85", { C: 0.85 }],
    ["SK5", { C: 0.85 }],
    ["SCM440", { C: 0.4, Cr: "?", Mo: "?" }],
    ["65Mn", { C: 0.65, Mn: "?" }],
    ["60Si2Mn", { C: 0.6, Si: 2, Mn: "?" }],
    ["GB T8", { C: 0.8 }],
    ["T8Mn", { C: 0.8, Mn: "?" }],
    ["9SiCr", { C: 0.9, Si: "?", Cr: "?" }],
    ["GCr15", { C: 1, Cr: 1.5 }],
    ["W18Cr4V", { C: "?", W: 18, Cr: 4, V: "?" }],
    ["3Cr13", { C: 0.3, Cr: 13 }],
    ["022Cr19Ni10", { C: 0.022, Cr: 19, Ni: 10 }],
    ["0Cr18Ni9", { C: "?", Cr: 18, Ni: 9 }],
    ["65Г", { C: 0.65, Mn: "?" }],
    ["50ХФА", { C: 0.5, Cr: "?", V: "?" }],
    ["60С2", { C: 0.6, Si: 2 }],
    ["95Х18", { C: 0.95, Cr: 18 }],
    ["4Х13", { C: 0.4, Cr: 13 }],
    ["У10А", { C: 1 }],
    ["9ХС", { C: 0.9, Cr: "?", Si: "?" }],
    ["13Х", { C: 1.3, Cr: "?" }],
    ["GOST 5950 11ХФ", { C: 1.1, Cr: "?", V: "?" }],
    ["GOST 4543 15Х", { C: 0.15, Cr: "?" }],
    ["ШХ15", { C: 1, Cr: 1.5 }],
    ["Р6М5", { C: "?", W: 6, Mo: 5 }],
    ["ГОСТ 40ХН2МА", { C: 0.4, Cr: "?", Ni: 2, Mo: "?" }],
    ["GOST 30KhGSA", { C: 0.3, Cr: "?", Mn: "?", Si: "?" }],
  ])("%s", (name, stated) => {
    expect(contents(name)).toEqual(stated);
  });

  it("marks carbon that only the kind of steel tells", () => {
    for (const name of ["CrWMn", "ХВГ", "GCr15", "ШХ15"])
      expect(decodeName(name).parts[0]?.isAbout, name).toBe(true);
    expect(decodeName("9CrWMn").parts[0]?.isAbout).toBeUndefined();
  });

  it("gives the suffix of W1 as the span it stands for", () => {
    // ASTM A686: suffix 9.5 is 0.95-1.05 % C.
    expect(decodeName("W1-9.5").parts[0]).toMatchObject({
      content: 1,
      says: expect.stringContaining("0.95 to 1.05 %"),
    });
  });

  it.each([
    ["D2", "a serial"],
    ["440C", "type number"],
    ["51410", '"51410" is 410, which states no content'],
    ["51502", "the last digits are the type"],
    ["30304", '"30304" is 304, which states no content'],
    ["S44004", "type number"],
    ["T30402", "a serial"],
    ["SKD11", "serial"],
    ["SK8", "1 to 7 (old ranks) or 60 and over"],
    ["S235", "a yield strength"],
    ["E335", "a yield strength"],
    ["1.4116", "stainless steel under 2.5 % Ni, with Mo"],
    ["52200", "five digits state carbon only"],
    ["12Х1", "put the standard in front"],
    ["Damascus", "follows no naming rule"],
  ])("%s is refused: %s", (name, sentence) => {
    expect(() => decodeName(name)).toThrow(NotAvailable);
    expect(() => decodeName(name)).toThrow(sentence);
  });

  it("asks for the system where two read a name differently", () => {
    expect(() => decodeName("T8")).toThrow('"AISI T8" (no content in the name) or "GB T8" (C 0.8)');
    expect(() => decodeName("45Cr13")).toThrow('"EN 45Cr13" (C 0.45 Cr 3.25) or "GB 45Cr13" (C 0.45 Cr 13)');
    expect(contents("60")).toEqual({ C: 0.6 }); // GB and GOST alike
  });
});

describe("rule against table", () => {
  it("agrees but for six names without a figure in front, which state no carbon", () => {
    const named = allGrades().flatMap((grade) => {
      const carbon = readName(bareName(grade), grade.system, grade.standard)?.parts[0];
      const { low = null, high = null } = grade.limits.C ?? {};
      const stated = carbon?.content ?? null;
      if (stated === null || low === null || high === null || grade.system === "AISI tool") return [];
      return [{ name: grade.designation, stated, low, high, isAbout: carbon?.isAbout }];
    });
    const outside = named.filter(({ stated, low, high }) => stated < low || stated > high);
    const inside = named.length - outside.length;
    const near = named.filter(({ stated, low, high }) => Math.abs(stated - (low + high) / 2) <= 0.0501);
    console.info(
      `${named.length} of ${allGrades().length} names carry carbon; ${inside} within the limits, ` +
        `${near.length} within 0.05 of the middle; outside: ${outside.map(({ name }) => name).join(", ")}`,
    );
    // An independent script found 206 of 212 within the limits on the table before GOST 60, 65 and 70 came to it;
    // a grade that is added has to agree as well.
    expect(named.length).toBeGreaterThanOrEqual(215);
    expect(near.length).toBeGreaterThanOrEqual(named.length - outside.length);
    expect(outside.map(({ name }) => name).sort()).toEqual(
      ["Cr12", "Cr12Mo1V1", "Cr12MoV", "Х12", "Х12МФ", "Х6ВФ"].sort(),
    );
    expect(outside.every(({ isAbout }) => isAbout)).toBe(true);
  });
});
