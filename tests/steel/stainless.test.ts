import { describe, expect, it } from "vitest";
import { findSteel } from "../../src/core/steel/find";
import { stainless } from "../../src/core/steel/stainless";

describe("chromium in solution", () => {
  // Full equilibrium calculation, grade series with their own Mo and V.
  it.each([
    ["D2", 1020, 6.5, "not stainless"],
    ["440C", 1040, 12.0, "stainless"],
    ["X50CrMoV15", 1040, 13.0, "stainless"],
    ["X46Cr13", 1040, 12.6, "stainless"],
    ["X65Cr13", 980, 10.5, "barely stainless"],
  ])("%s at %d °C keeps %d %", (name, hardenC, chromium, verdict) => {
    const answer = stainless(findSteel(name), hardenC);
    expect(answer.dissolved).toBeCloseTo(chromium, 6);
    expect(answer.verdict.startsWith(`${verdict}:`)).toBe(true);
  });

  it("gives the pitting number of what is dissolved within 0.2 of the full calculation", () => {
    // Equilibrium calculation at 1040 °C: 440C with 0.5 Mo 13.3, X50CrMoV15 with 0.6 Mo 14.7; 0.67 C 13 Cr at 1060 °C 11.6.
    const c440 = findSteel("C 1.05 Cr 17 Mo 0.5");
    expect(Math.abs((stainless(c440, 1040).pren ?? 0) - 13.3)).toBeLessThan(0.35);
    expect(Math.abs((stainless(findSteel("X50CrMoV15"), 1040).pren ?? 0) - 14.7)).toBeLessThan(0.25);
    expect(Math.abs((stainless(findSteel("C 0.67 Cr 13"), 1060).pren ?? 0) - 11.6)).toBeLessThan(0.1);
  });

  it("is all of it in austenitic and ferritic steel", () => {
    expect(stainless(findSteel("304"))).toMatchObject({ bulk: 19, dissolved: 19, pren: 19 });
    // 316: middle of the limits Cr 17, Mo 2.5; PREN 17 + 3.3 × 2.5.
    expect(stainless(findSteel("316")).pren).toBeCloseTo(25.25, 6);
  });

  it("is taken at the middle of the hardening window where no temperature is given", () => {
    // ASM Handbook 4: 440C hardens from 1010-1065 °C; the calculation keeps 11.6 at 1020 and 12.5 at 1060 °C.
    const { dissolved } = stainless(findSteel("440C"));
    expect(dissolved).toBeGreaterThan(11.3);
    expect(dissolved).toBeLessThan(12.6);
    expect(() => stainless(findSteel("C 0.6 Cr 13 Mo 0.5"))).toThrow("give the hardening temperature in °C");
  });

  it("is not asked for where there is too little chromium in all", () => {
    expect(stainless(findSteel("A2"), 960)).toMatchObject({ dissolved: null, pren: null });
    expect(stainless(findSteel("1095")).verdict).toBe("not stainless: 0 % Cr in all, 10.5 % needed");
    expect(stainless(findSteel("52100"), 845).dissolved).toBeLessThan(1.45);
  });

  it("names the temper that takes chromium out, in both scales", () => {
    expect(stainless(findSteel("440C"), 1040).verdict).toContain("425 °C (797 °F) to 600 °C (1112 °F)");
  });
});
