import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, inject, test } from "vitest";
import { dynamicCode, GLOBAL_OBJECT } from "./dynamic-code";

const FOLDER = inject("pages");

/** The vendor's own script, which a production page loads from the vendor and the test build carries beside it. */
const VENDOR = /office|telemetry|custom-functions-runtime/i;

const files = readdirSync(FOLDER, { recursive: true, encoding: "utf8" }).filter((file) => !VENDOR.test(file));
const scripts = files.filter((file) => file.endsWith(".js"));
const text = (file: string) => readFileSync(join(FOLDER, file), "utf8");

/** Parts with packages of others in them, which webpack marks so; they are fetched only when their page opens. */
const hasPackages = (file: string) => text(file).startsWith("/*! For license information");

/** Directives of the policy in a page, by name. */
function policyOf(html: string): Map<string, string[]> {
  const content = /http-equiv="?Content-Security-Policy"? content="([^"]*)"/.exec(html)?.[1] ?? "";
  return new Map(
    content.split(";").map((directive) => {
      const [name = "", ...values] = directive.trim().split(/\s+/);
      return [name, values];
    }),
  );
}

test("no bundle runs text as code", () => {
  expect(scripts).toContain("functions.js");
  expect(["functions.js", "taskpane.js"].filter(hasPackages)).toEqual([]);
  const found = scripts.flatMap((file) => dynamicCode(file, text(file)));
  const isNeverRun = (place: string) =>
    place.endsWith(GLOBAL_OBJECT) && hasPackages(place.split(":")[0] ?? "");
  expect(found.filter((place) => !isNeverRun(place))).toEqual([]);
});

test("no source map or test leaves with the pages", () => {
  expect(files.filter((file) => /\.map$|\.test\./.test(file))).toEqual([]);
});

test("our bundles speak to no address: no request, no socket, no beacon", () => {
  // What a shared package could do, the policy below refuses: it lets pages speak to their own host alone.
  for (const file of scripts.filter((name) => !hasPackages(name))) {
    // Whoever hosts the pages is asked for the list of its own files; check.html asks for each of them.
    const asked = text(file).replace(/\bfetch\("files\.json"/g, "");
    const requests = file === "check.js" ? /\bfetch\("[^"]*:/ : /\bfetch\(/;
    expect(asked, file).not.toMatch(requests);
    expect(asked, file).not.toMatch(/XMLHttpRequest|WebSocket|sendBeacon|EventSource/);
  }
});

describe("policy of the pages", () => {
  const pages = files.filter((file) => file.endsWith(".html") && !file.includes("articles"));

  test.each(pages)("%s", (page) => {
    const policy = policyOf(text(page));
    expect(policy.get("default-src") ?? policy.get("script-src")).toBeDefined();
    for (const [name, values] of policy) {
      expect(values, name).not.toContain("'unsafe-eval'");
      expect(values, name).not.toContain("*");
      expect(values.join(" "), name).not.toMatch(/http:/);
    }
    expect(policy.get("script-src") ?? policy.get("default-src")).not.toContain("'unsafe-inline'");
    expect(policy.get("connect-src") ?? policy.get("default-src")).toSatisfy((values: string[]) =>
      values.every((value) => ["'none'", "'self'"].includes(value)),
    );
    expect(policy.get("base-uri")).toEqual(["'none'"]);
    expect(policy.get("form-action")).toEqual(["'none'"]);
  });
});
