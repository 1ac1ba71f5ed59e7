import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, inject, test } from "vitest";
import { newerThanSafari154 } from "./old-browsers";

const FOLDER = inject("pages");
/**
 * Without the vendor's own files, and without the maker of workbooks: a package in it looks behind in a pattern, so that
 * share copies and new plans want Safari 16.4. It is fetched on a press and takes nothing else along.
 */
const OURS = readdirSync(FOLDER).filter((name) =>
  /^(functions|taskpane|check|page-(?!workbook-files).*)\.js$/.test(name),
);

test("the pane, its pages and the functions use nothing newer than Safari 15.4", () => {
  expect(OURS.length).toBeGreaterThan(12);
  const found = OURS.flatMap((name) => newerThanSafari154(name, readFileSync(join(FOLDER, name), "utf8")));
  expect(found).toEqual([]);
});

test.each([
  ["const a = /(?<=x)y/;", "a look behind"],
  ['new RegExp("(?<!x)y", "u")', "a look behind"],
  ["new RegExp(`(?<!x)$" + "{a}`)", "a look behind"],
  ["const a = /x/v;", "the flag v"],
  ["[1].toSorted()", "toSorted (16)"],
  ["AbortSignal.timeout(5)", "timeout (16)"],
  ["class A { static { f(); } }", "a static block"],
  ["new OffscreenCanvas(1, 1)", "OffscreenCanvas (16.4)"],
])("%s is seen", (code, fault) => {
  expect(newerThanSafari154("x.js", code).join()).toContain(fault);
});

test.each(["/(?<year>x)/", "[1].at(-1)", "a.toSorted?.()", "setTimeout(f, 5)", "structuredClone(a)"])(
  "%s is let be",
  (code) => {
    expect(newerThanSafari154("x.js", code)).toEqual([]);
  },
);
