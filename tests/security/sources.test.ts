import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { dynamicCode } from "./dynamic-code";

function filesBelow(folder: string, ending: RegExp): string[] {
  return readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((path) => ending.test(path))
    .map((path) => `${folder}/${path}`)
    .sort();
}

describe("the scan itself", () => {
  test.each([
    ["eval('1')", "eval"],
    ["new Function('return 1')", "a function made of text"],
    ["Function('return 1')()", "a function made of text"],
    ["Function('return this')()", "the global object by a text"],
    ["window.setTimeout('x()', 1)", "setTimeout with a text"],
    ["document.write('<p>')", "document.write"],
    ["pane.innerHTML = text", "innerHTML"],
    ["pane.insertAdjacentHTML('beforeend', text)", "insertAdjacentHTML"],
    ["import(address)", "import of an address that is worked out"],
  ])("sees %s", (code, what) => {
    expect(dynamicCode("a.js", code)).toEqual([`a.js:1: ${what}`]);
  });

  test("leaves harmless neighbours alone", () => {
    const harmless =
      "evaluate('1'); setTimeout(run, 1); el.textContent = t; if (a.innerHTML === b) run(); import('./page');";
    expect(dynamicCode("a.js", harmless)).toEqual([]);
  });
});

test("no source file runs text as code or turns it into markup", () => {
  const files = filesBelow("src", /\.(ts|cjs|js|mts)$/);
  expect(files.length).toBeGreaterThan(300);
  expect(files.flatMap((file) => dynamicCode(file, readFileSync(file, "utf8")))).toEqual([]);
});

describe("pages", () => {
  const pages = filesBelow("src", /\.html$/);

  test.each(pages)("%s has no script in its markup", (page) => {
    const html = readFileSync(page, "utf8");
    expect(html).not.toMatch(/\son[a-z]+\s*=/i);
    expect(html).not.toMatch(/javascript:/i);
    expect([...html.matchAll(/<script(?![^>]*\ssrc=)[^>]*>/gi)]).toEqual([]);
  });

  test.each(pages.filter((page) => /<head>/.test(readFileSync(page, "utf8"))))(
    "%s states a policy",
    (page) => {
      expect(readFileSync(page, "utf8")).toContain('http-equiv="Content-Security-Policy"');
    },
  );
});

test("no page writes over a file: what it hands out is a download, which the browser gives a name of its own", () => {
  const files = filesBelow("src", /\.ts$/).filter((file) => !file.startsWith("src/cli/"));
  const writing = /showSaveFilePicker|createWritable|showDirectoryPicker|writeFile|createWriteStream/;
  const found = files.filter((file) => writing.test(readFileSync(file, "utf8")));
  expect(found.filter((file) => !/^src\/(?:library|workbench\/serve)\//.test(file))).toEqual([]);
  const handing = files.filter((file) => /\.download = /.test(readFileSync(file, "utf8")));
  expect(handing).toEqual(["src/workbench/files/file-tools.ts"]);
});
