import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { catalogue } from "../../src/functions/catalogue";
import { metadataOf } from "../../src/functions/metadata";
import { helpFiles } from "../../src/taskpane/help/site";

// Pages and papers are written in British English and say so (lang="en-GB"). The words are American spellings of what
// this tool speaks of; -ise and -isation by the usual British rule (from memory).

const AMERICAN = new RegExp(
  `\\b(${[
    "colou?rize\\w*|colors?|colored|coloring|gr[a]ys?|grayish|center(s|ed|ing)?|fibers?|(milli|centi|kilo|micro)meters?",
    "liters?|milliliters?|analyz\\w+|catalogs?|labeled|labeling|canceled|canceling|traveled|traveling|modeled|modeling",
    "favor\\w*|behaviors?|neighbors?|neighboring|molds?|aluminum|judgment|skillful|defense|offense|practiced|honor\\w*",
    "vapors?|odors?|armor\\w*|beveled|beveling|leveled|leveling|signaled|fulfill|plow\\w*|gages?|artifacts?",
    "\\w+iz(?:e|es|ed|ing|ation|ations|er|ers)",
  ].join("|")})\\b`,
  "gi",
);

/** Names that others gave: words of Excel's own menus, of standards and of open formats. */
const NAMED =
  /Trust\s+Center|Trusted\s+add-in\s+catalogs|Add catalog|Department of Defense|arms-n-armor|aluminum plates/gi;

/** Words that end so in Britain too. */
const KEPT = /^\w*(?:size|sized|sizes|sizing|prize|prizes|seize|seized)$/i;

/** Prose without code, names of files and styles. */
const prose = (text: string) =>
  text
    .replace(/```[\s\S]*?```|`[^`]*`|<style[\s\S]*?<\/style>|\b[\w./-]+\.(?:ts|cjs|css|json|md|svg)\b/g, " ")
    .replace(NAMED, " ");

const american = (text: string) => (prose(text).match(AMERICAN) ?? []).filter((word) => !KEPT.test(word));

function sourcesIn(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".ts"))
    .map((name) => join(folder, name));
}

/** What comments of a source say. */
const commentsOf = (text: string) => (text.match(/\/\*\*[\s\S]*?\*\/|^\s*\/\/.*$/gm) ?? []).join("\n");

test("the list finds American spellings and lets British ones be", () => {
  expect(american("gray color, center, normalized, austenitizing, aluminum, canceled")).toHaveLength(7);
  expect(american("grey colour, centre, normalised, size 3, resized, cancelled, metre, prize")).toEqual([]);
});

test("every document is in British English", () => {
  for (const file of ["README.md", "DEVELOPERS.md", "tests/excel-checklist.md"])
    expect(american(readFileSync(file, "utf8")), file).toEqual([]);
  for (const file of readdirSync("assets/help"))
    expect(american(readFileSync(join("assets/help", file), "utf8")), file).toEqual([]);
});

test("so are the help pages, which say so, and what Excel shows of the functions", () => {
  for (const [file, text] of Object.entries(helpFiles())) {
    if (!file.endsWith(".html")) continue;
    expect(american(text), file).toEqual([]);
    expect(text, file).toContain('<html lang="en-GB">');
  }
  expect(american(JSON.stringify(metadataOf(catalogue)))).toEqual([]);
});

test("so are the pages and the comments of the code", () => {
  for (const file of ["src/taskpane/taskpane.html", "src/workbench/page/workbench.html"]) {
    const text = readFileSync(file, "utf8");
    expect(text).toContain('lang="en-GB"');
    expect(american(text.replace(/<(?:link|meta)[^>]*>/g, "")), file).toEqual([]);
  }
  for (const file of sourcesIn("src"))
    expect(american(commentsOf(readFileSync(file, "utf8"))), file).toEqual([]);
});
