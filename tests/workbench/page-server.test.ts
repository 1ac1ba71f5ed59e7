import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { request, type Server } from "node:http";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";

interface PageServer {
  readonly server: Server;
  publish(folder: string): void;
}
const {
  listen,
  pageServer,
}: { listen(server: Server, wanted: number): Promise<string>; pageServer(): PageServer } = createRequire(
  import.meta.url,
)("../../src/workbench/serve/page-server.cjs");

let outer: string;
let served: PageServer;
let address: string;

beforeEach(async () => {
  outer = mkdtempSync(join(tmpdir(), "page-server-"));
  mkdirSync(join(outer, "pages"));
  writeFileSync(join(outer, "secret.txt"), "secret");
  writeFileSync(join(outer, "pages", "index.html"), "<p>the page</p>");
  served = pageServer();
  address = await listen(served.server, 0);
});

afterEach(() => {
  served.server.closeAllConnections();
  served.server.close();
  rmSync(outer, { recursive: true });
});

/** Status of a raw path, which a browser or `fetch` would tidy up first. */
function status(path: string): Promise<number | undefined> {
  return new Promise((resolve, reject) => {
    const asked = request(new URL(address), { path }, (response) => {
      response.resume();
      resolve(response.statusCode);
    });
    asked.on("error", reject);
    asked.end();
  });
}

test("answers with a page that waits until the real one is built", async () => {
  expect(await (await fetch(address)).text()).toContain("Building the workbench");
  served.publish(join(outer, "pages"));
  expect(await (await fetch(address)).text()).toBe("<p>the page</p>");
});

test.each([
  "/../secret.txt",
  "/%2e%2e/secret.txt",
  "/..%2fsecret.txt",
  "//../secret.txt",
  "/missing.js",
  "/%00",
  "/%",
])("%s leads nowhere", async (path) => {
  served.publish(join(outer, "pages"));
  expect([400, 404]).toContain(await status(path));
});

test("listens on this machine only, and on another port where the wanted one is taken", async () => {
  const { port } = new URL(address);
  const second = pageServer();
  const other = await listen(second.server, Number(port));
  second.server.close();
  expect(other).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/$/);
  expect(new URL(other).port).not.toBe(port);
});
