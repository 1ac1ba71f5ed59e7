import { createHash } from "node:crypto";
import { existsSync, readFileSync } from "node:fs";
import { createServer, type Server } from "node:http";
import { createRequire } from "node:module";
import type { AddressInfo } from "node:net";
import { extname, join } from "node:path";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, test } from "vitest";
import { version } from "../../package.json";
import { launch } from "../browser";
import { parseXml } from "./xml";

const { kitFiles, PLACEHOLDER_HOST } = {
  ...createRequire(import.meta.url)("../../manifest/hosting-kit.cjs"),
  ...createRequire(import.meta.url)("../../manifest/hosting.cjs"),
} as {
  kitFiles: (of: { path?: string; hasFunctions: boolean }) => Record<string, string>;
  PLACEHOLDER_HOST: string;
};

const pages = inject("pages");
const text = (name: string) => readFileSync(join(pages, name), "utf8");

/** Rules of a `_headers` file as hosts that read one document it: a path, then its headers, indented; `*` at the end. */
function headerRules(file: string): { path: string; headers: [string, string][] }[] {
  const rules: { path: string; headers: [string, string][] }[] = [];
  for (const line of file.split("\n").filter((given) => given.trim() !== "" && !given.startsWith("#"))) {
    const header = /^\s+([\w-]+): (.+)$/.exec(line);
    if (header === null) rules.push({ path: line, headers: [] });
    else rules.at(-1)?.headers.push([header[1] ?? "", header[2] ?? ""]);
  }
  return rules;
}

const KINDS: Readonly<Record<string, string>> = {
  ".html": "text/html",
  ".js": "text/javascript",
  ".json": "application/json",
  ".css": "text/css",
};

/** A static host that sends what `_headers` tells it, or without one nothing but the content type. */
async function host(rules: ReturnType<typeof headerRules>): Promise<{ server: Server; address: string }> {
  const server = createServer((request, response) => {
    const { pathname } = new URL(request.url ?? "/", "http://localhost");
    const file = join(pages, pathname);
    if (!existsSync(file)) return void response.writeHead(404).end();
    const fitting = rules.filter(({ path }) =>
      path.endsWith("*") ? pathname.startsWith(path.slice(0, -1)) : path === pathname,
    );
    for (const [name, value] of fitting.flatMap(({ headers }) => headers)) response.setHeader(name, value);
    response.setHeader("Content-Type", KINDS[extname(file)] ?? "application/octet-stream");
    response.end(readFileSync(file));
  });
  await new Promise<void>((listening) => server.listen(0, "127.0.0.1", listening));
  return { server, address: `http://127.0.0.1:${(server.address() as AddressInfo).port}` };
}

describe("headers for static hosts", () => {
  const kit = kitFiles({ path: "/blades", hasFunctions: true });

  test("are the same in every form: open metadata, nothing kept, framing left free", () => {
    for (const [name, content] of Object.entries(kit)) {
      expect(content, name).toContain("Access-Control-Allow-Origin");
      expect(content, name).toContain("no-cache");
      expect(content, name).toContain("nosniff");
      const setting = content
        .split("\n")
        .filter((line) => /X-Frame-Options/.test(line) && !/^(#|<!--)/.test(line));
      for (const line of setting) expect(line, name).toMatch(/unset|<remove/);
    }
  });

  test("as built: `_headers` opens functions.json alone", () => {
    const rules = headerRules(text("_headers"));
    expect(rules.map(({ path }) => path)).toEqual(["/*", "/functions.json"]);
    expect(rules[1]?.headers).toEqual([["Access-Control-Allow-Origin", "*"]]);
    for (const name of [".htaccess", "web.config", "nginx.conf.sample"])
      expect(text(name).length).toBeGreaterThan(200);
  });

  test("below a path, rules name it", () => {
    expect(headerRules(kit._headers ?? "").map(({ path }) => path)).toEqual([
      "/blades/*",
      "/blades/functions.json",
    ]);
    expect(kit["nginx.conf.sample"]).toContain("location = /blades/functions.json {");
  });

  test("web.config is well-formed and adds nothing that it has not taken away before", () => {
    const root = parseXml(kit["web.config"] ?? "");
    expect(root.name).toBe("configuration");
    for (const added of root.all("add")) {
      expect(root.all("remove").map(({ attributes }) => attributes.name)).toContain(added.attributes.name);
    }
  });

  test("the workbench alone needs no open metadata", () => {
    expect(Object.values(kitFiles({ hasFunctions: false })).join()).not.toContain("Access-Control");
  });
});

test("files.json names every file of the build with its digest", () => {
  const built = JSON.parse(text("files.json")) as {
    version: string;
    files: { name: string; sha256: string }[];
  };
  expect(built.version).toBe(version);
  expect(built.files.length).toBeGreaterThan(150);
  for (const name of ["functions.js", "functions.json", "taskpane.html", "manifest.xml", "licences.txt"]) {
    const found = built.files.find((file) => file.name === name);
    expect(found?.sha256, name).toBe(
      createHash("sha256")
        .update(readFileSync(join(pages, name)))
        .digest("hex"),
    );
  }
});

test("support and privacy stand among the pages, and the manifest leads to the first", () => {
  expect(text("manifest.xml")).toContain(
    `<SupportUrl DefaultValue="${PLACEHOLDER_HOST}/assets/help/support.html"/>`,
  );
  expect(text("assets/help/support.html")).toContain("check.html");
  expect(text("assets/help/privacy.html")).toContain("Nothing you type, open or calculate is sent");
});

describe("the check of the host", () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await launch();
  });
  afterAll(() => browser?.close());

  async function checked(rules: ReturnType<typeof headerRules>): Promise<string[]> {
    const { server, address } = await host(rules);
    const page = await browser.newPage();
    await page.goto(`${address}/check.html`);
    await page.waitForSelector("#found h2", { timeout: 60_000 });
    const sentences = await page.locator("#found li").allTextContents();
    await page.close();
    server.close();
    return sentences;
  }

  test("with the kit's headers it misses nothing but https and the address", async () => {
    const sentences = await checked(headerRules(text("_headers")));
    const faults = sentences.filter((sentence) => sentence.startsWith("To mend"));
    expect(faults).toEqual([
      expect.stringContaining("not https"),
      expect.stringContaining("The manifest leads to"),
    ]);
    expect(sentences.join("\n")).toMatch(/All \d+ files are there, as they were built/);
  });

  test("a host as it comes is told what to send, and an empty pane is foretold", async () => {
    const bare = await checked([{ path: "/*", headers: [["X-Frame-Options", "SAMEORIGIN"]] }]);
    const all = bare.join("\n");
    expect(all).toContain('send "Access-Control-Allow-Origin: *"');
    expect(all).toContain('Send "Cache-Control: no-cache"');
    expect(all).toContain("Excel then shows an empty pane");
  });
});
