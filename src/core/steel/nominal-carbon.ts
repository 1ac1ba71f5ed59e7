import type { SourceKey } from "../sources";
import type { Grade, System } from "./steel";

/** One way in which a system writes carbon into a name: the digits found, divided. */
interface CarbonRule {
  readonly pattern: RegExp;
  /** 100: hundredths of a percent; 10: tenths. */
  readonly divisor: number;
  /** The rule holds only in standards whose name matches. */
  readonly standard?: RegExp;
}

/** The rules of one system and where they come from. */
export interface CarbonRules {
  readonly source: SourceKey;
  readonly locator: string;
  readonly rules: readonly CarbonRule[];
}

const NAMES_IN_TENTHS = /^GOST 5950/;

/** The first rule of a system that fits a name decides; a name that no rule fits encodes no carbon. */
export const CARBON_RULES: Readonly<Partial<Record<System, CarbonRules>>> = {
  "SAE/AISI": {
    source: "rule-sae",
    locator: "last two digits, or last three in 50xxx, 51xxx and 52xxx, are hundredths of a percent",
    rules: [
      { pattern: /^5[012](\d{3})$/, divisor: 100 },
      { pattern: /^\d{2}[BL]?(\d{2})H?$/, divisor: 100 },
    ],
  },
  EN: {
    source: "rule-en-10027",
    locator: "first figure of the name, after C or X where there is one, is hundredths of a percent",
    rules: [
      { pattern: /^[CX](\d{1,3})/, divisor: 100 },
      { pattern: /^(\d{2,3})[A-Z]/, divisor: 100 },
    ],
  },
  JIS: {
    source: "rule-jis",
    locator:
      "SnnC, SK with two or three digits from 60 and the last two digits of SCM are hundredths of a percent",
    rules: [
      { pattern: /^S(\d{2})C/, divisor: 100 },
      { pattern: /^SK([6-9]\d|1\d\d)$/, divisor: 100 },
      { pattern: /^SCM\d(\d{2})$/, divisor: 100 },
    ],
  },
  GB: {
    source: "rule-gb",
    locator: "two or three leading digits are hundredths of a percent; one leading digit, and T, tenths",
    rules: [
      { pattern: /^(?:GB )?(\d{2,3})(?!\d)/, divisor: 100 },
      { pattern: /^T(\d{1,2})/, divisor: 10 },
      { pattern: /^(\d)[A-Z]/, divisor: 10 },
    ],
  },
  GOST: {
    source: "rule-gost",
    locator: "two leading digits are hundredths of a percent; У, and GOST 5950 tool steels, tenths",
    rules: [
      { pattern: /^У(\d{1,2})/, divisor: 10 },
      { pattern: /^(\d{1,2})[А-Я]/, divisor: 10, standard: NAMES_IN_TENTHS },
      { pattern: /^(?:GOST )?(\d{2,3})(?!\d)/, divisor: 100 },
    ],
  },
};

function figureIn({ designation, standard }: Grade, rule: CarbonRule): number | null {
  if (rule.standard !== undefined && !rule.standard.test(standard)) return null;
  const digits = rule.pattern.exec(designation)?.[1];
  return digits === undefined ? null : Number(digits) / rule.divisor;
}

function firstFigure(grade: Grade): number | null {
  for (const rule of CARBON_RULES[grade.system]?.rules ?? []) {
    const figure = figureIn(grade, rule);
    if (figure !== null) return figure;
  }
  return null;
}

/**
 * Carbon that the designation itself states.
 *
 * @returns Mass % C, or null where the system writes no carbon into this name, where the standard
 *   sets one limit only, or where the figure would lie outside the limits of the grade.
 */
export function encodedCarbon(grade: Grade): number | null {
  const { low = null, high = null } = grade.limits.C ?? {};
  if (low === null || high === null) return null;
  const carbon = firstFigure(grade);
  return carbon !== null && carbon >= low && carbon <= high ? carbon : null;
}
