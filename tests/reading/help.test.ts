import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { BLADE_STATUSES } from "../../src/core/blade/status";
import { catalogue } from "../../src/functions/catalogue";
import glossary from "../../src/taskpane/help/glossary.json";
import { helpFiles } from "../../src/taskpane/help/site";

// House rules: a page for every function, terms in the order of the alphabet, notes that name every word there is.

const files = helpFiles();
const terms = glossary.rows.map(([term = ""]) => term);

describe("help", () => {
  test("has a page for every function, led to from the first", () => {
    for (const { name } of catalogue) {
      expect(Object.keys(files), name).toContain(`${name}.html`);
      expect(files["index.html"]).toContain(`href="${name}.html"`);
    }
  });

  test("explains each term once, in the order of the alphabet", () => {
    const folded = terms.map((term) => term.toLowerCase());
    expect(new Set(folded).size).toBe(folded.length);
    expect(folded).toEqual([...folded].sort());
  });

  test("explains the words that README puts in italics, and leads to functions that there are", () => {
    const words = [...readFileSync("README.md", "utf8").matchAll(/(?<!\*)\*([a-z]+)\*(?!\*)/g)];
    expect(words.length).toBeGreaterThan(4);
    for (const [, word = ""] of words) expect(terms.map((term) => term.toLowerCase())).toContain(word);
    const known = new Set(catalogue.map(({ name }) => name));
    for (const [, , meaning = ""] of glossary.rows)
      for (const [name] of meaning.matchAll(/\b[A-Z]{3,}(?:_[A-Z]+)+\b/g))
        expect(known.has(name), name).toBe(true);
  });

  test("tells on upgrading every status word of a blade, and every function that is new", () => {
    const page = files["upgrading.html"] ?? "";
    for (const word of BLADE_STATUSES) expect(page).toContain(word);
    for (const name of ["STEELS_FOR", "BEST_OFFER", "TRADE_OFF"]) expect(page).toContain(`${name}.html`);
  });
});
