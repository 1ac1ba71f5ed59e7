import { walkXml } from "../file/package/xml";

/** Elements that hold formulas in any part: cells, names, rules, lists, tables, charts. */
const FORMULA = /^(?:f|formula\d?|definedName|\w+Formula|sqref)$/;

/** The formulas that stand in a part or in one element of it. */
export function formulaTexts(part: string, xml: string): string[] {
  const found: string[] = [];
  let formula: string | undefined;
  walkXml(part, xml, {
    open({ name, attributes }) {
      if (FORMULA.test(name)) formula = "";
      // A colour scale or an icon set keeps the formula of a limit in an attribute (ECMA-376 Part 1, 18.3.1.11).
      if (name === "cfvo" && attributes.val !== undefined) found.push(attributes.val);
    },
    text(text) {
      if (formula !== undefined) formula += text;
    },
    close(name) {
      if (!FORMULA.test(name) || formula === undefined) return;
      found.push(formula);
      formula = undefined;
    },
  });
  return found;
}
