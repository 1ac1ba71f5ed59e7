import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { describe, expect, inject, test } from "vitest";
import { catalogue } from "../../src/functions/catalogue";
import { parameterHelp } from "../../src/functions/metadata";
import { escaped } from "../../src/taskpane/help/html";

const folder = join(inject("pages"), "assets/help");
const read = (file: string) => readFileSync(join(folder, file), "utf8");
const pages = readdirSync(folder).filter((name) => name.endsWith(".html"));

/** Addresses in a page that lead to a file of ours. */
function links(page: string): string[] {
  return [...read(page).matchAll(/(?:href|src)="([^"]+)"/g)].map(([, to = ""]) => to);
}

describe("help folder", () => {
  test("has a page for every function, and each states its arguments, cases and evidence", () => {
    for (const fn of catalogue) {
      const text = read(`${fn.name}.html`);
      expect(text).toContain(escaped(fn.summary));
      for (const parameter of Object.values(fn.parameters)) {
        expect(text, `${fn.name} ${parameter.label}`).toContain(escaped(parameter.accepts));
        expect(parameterHelp(parameter)).toContain(parameter.help);
        expect(text).toContain(escaped(parameter.help));
      }
      expect(text).toContain("Worked cases");
      expect(text).toContain("Where the answer comes from");
    }
  });

  test("holds no script, and leads only to files that are there", () => {
    expect(pages.length).toBeGreaterThan(catalogue.length + 7);
    for (const page of pages) {
      expect(read(page), page).not.toMatch(/<script|javascript:|\bon\w+=/i);
      for (const to of links(page)) {
        expect(to, page).not.toMatch(/^\w+:/);
        expect(existsSync(resolve(dirname(join(folder, page)), to)), `${page}: ${to}`).toBe(true);
      }
    }
  });

  test("leaves its own code out of what is shipped", () => {
    expect(readdirSync(inject("pages")).filter((name) => name.includes("help"))).toEqual([]);
  });

  test("draws the guide's pictures from the functions", () => {
    expect(read("profile.svg")).toMatch(/balance \d+ mm from the heel/);
    expect(read("temper-curve.svg")).toMatch(/class="band".*class="likely"/s);
    expect(read("guide.html")).not.toMatch(/NaN|undefined|#N\/A: /);
  });
});
