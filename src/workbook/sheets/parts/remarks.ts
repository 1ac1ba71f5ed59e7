/** Something odd: the test that finds it, and what is said, both as formulas without an equals sign. */
export interface Oddity {
  readonly when: string;
  readonly said: string;
}

/** "OK", or CHECK with all that is odd. */
export function checkFormula(oddities: readonly Oddity[]): string {
  const found = oddities.map(({ when, said }) => `IF(${when},${said},"")`);
  return `IF(OR(${oddities.map(({ when }) => when).join(",")}),"CHECK: "&TEXTJOIN("; ",TRUE,${found.join(",")}),"OK")`;
}
