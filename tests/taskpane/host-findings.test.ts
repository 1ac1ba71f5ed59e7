import { expect, test } from "vitest";
import { type Answer, type BuiltSite, findings } from "../../src/taskpane/hosting/findings";

const HOST = "https://tools.example.org/blades";

const SITE: BuiltSite = {
  version: "1.0.0",
  host: HOST,
  files: ["functions.json", "functions.js", "taskpane.html", "taskpane.css"].map((name) => ({
    name,
    bytes: 1,
    sha256: `digest of ${name}`,
  })),
};

const KIND: Readonly<Record<string, string>> = {
  "functions.json": "application/json; charset=utf-8",
  "functions.js": "text/javascript",
  "taskpane.html": "text/html",
  "taskpane.css": "text/css",
};

type Change = Partial<
  Record<
    | "status"
    | "sha256"
    | "content-type"
    | "cache-control"
    | "x-frame-options"
    | "content-security-policy"
    | "access-control-allow-origin",
    string
  >
>;

function answers(changed: Readonly<Record<string, Change>> = {}): Answer[] {
  return SITE.files.map(({ name, sha256 }) => {
    const change = changed[name] ?? {};
    const headers: Readonly<Record<string, string>> = {
      "content-type": KIND[name] ?? "",
      "cache-control": "no-cache",
      ...(name === "functions.json" ? { "access-control-allow-origin": "*" } : {}),
      ...change,
    };
    const header = (key: string) => headers[key] ?? "";
    return { name, status: Number(change.status ?? 200), sha256: change.sha256 ?? sha256, header };
  });
}

const faults = (given: readonly Answer[], at = `${HOST}/check.html`) =>
  findings(SITE, given, at)
    .filter(({ isFault }) => isFault)
    .map(({ sentence }) => sentence);

test("a host that sends all of it is in order", () => {
  expect(faults(answers())).toEqual([]);
});

test.each<[string, Record<string, Change>, RegExp]>([
  ["a file that is not there", { "functions.js": { status: "404" } }, /^Missing: functions\.js\./],
  ["a file of another build", { "functions.js": { sha256: "other" } }, /^Not as built: functions\.js\./],
  [
    "a script sent as text",
    { "functions.js": { "content-type": "text/plain" } },
    /content type text\/javascript: functions\.js/,
  ],
  [
    "metadata that is not opened",
    { "functions.json": { "access-control-allow-origin": "" } },
    /cannot read functions\.json/,
  ],
  [
    "metadata opened to one site only",
    { "functions.json": { "access-control-allow-origin": "https://a.example" } },
    /cannot read functions\.json/,
  ],
  [
    "pages kept for a day",
    { "taskpane.html": { "cache-control": "max-age=86400" } },
    /May be kept .*taskpane\.html/,
  ],
  [
    "pages kept as the browser likes",
    { "taskpane.html": { "cache-control": "" } },
    /May be kept .*taskpane\.html/,
  ],
  [
    "framing forbidden",
    { "taskpane.html": { "x-frame-options": "DENY" } },
    /X-Frame-Options: DENY.*empty pane/,
  ],
  [
    "framing limited",
    { "taskpane.html": { "content-security-policy": "frame-ancestors 'self'" } },
    /frame-ancestors/,
  ],
  [
    "Excel's script kept out",
    { "taskpane.html": { "content-security-policy": "script-src 'self'" } },
    /keeps Excel's own script out/,
  ],
])("%s is one fault", (_, changed, sentence) => {
  expect(faults(answers(changed))).toEqual([expect.stringMatching(sentence)]);
});

test("an address that is not the manifest's, or not https, is told", () => {
  expect(faults(answers(), "https://elsewhere.example/check.html")).toEqual([
    expect.stringMatching(
      /leads to https:\/\/tools\.example\.org\/blades, these pages are at https:\/\/elsewhere/,
    ),
  ]);
  expect(faults(answers(), "http://tools.example.org/blades/check.html")[0]).toContain("not https");
});

test("many files with one cause are one sentence of a readable length", () => {
  const many = Array.from({ length: 30 }, (_, at) => ({ name: `a${at}.js`, bytes: 1, sha256: "x" }));
  const none = many.map(({ name }) => ({ name, status: 404, sha256: "", header: () => "" }));
  const said = findings({ ...SITE, files: many }, none, `${HOST}/check.html`).filter(
    ({ isFault }) => isFault,
  );
  expect(said.length).toBe(1);
  expect(said[0]?.sentence).toContain("and 25 more");
  expect(said[0]?.sentence.split(" ").length).toBeLessThanOrEqual(40);
});
