import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { type IncomingHttpHeaders, request, type Server } from "node:http";
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

const { otherAddress }: { otherAddress(address: string, record: string): string } = createRequire(
  import.meta.url,
)("../../src/workbench/serve/last-address.cjs");

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

/** Status and headers of a request with a method and a host of one's own. */
function asked(
  method: string,
  host: string,
): Promise<{ status: number | undefined; headers: IncomingHttpHeaders }> {
  return new Promise((resolve, reject) => {
    const sent = request(new URL(address), { method, headers: { host } }, (response) => {
      response.resume();
      resolve({ status: response.statusCode, headers: response.headers });
    });
    sent.on("error", reject);
    sent.end();
  });
}

test("answers to its own address alone, and gives pages only (DNS rebinding, OWASP)", async () => {
  served.publish(join(outer, "pages"));
  const { host, port } = new URL(address);
  for (const own of [host, `localhost:${port}`]) expect((await asked("GET", own)).status).toBe(200);
  for (const other of ["forge.example", `forge.example:${port}`, "127.0.0.1", "127.0.0.1:1"])
    expect((await asked("GET", other)).status, other).toBe(421);
  for (const method of ["POST", "PUT", "DELETE", "OPTIONS"])
    expect((await asked(method, host)).status, method).toBe(405);
  expect((await asked("HEAD", host)).status).toBe(200);
});

test("sends the policy of the page as a header, and lets nobody frame it", async () => {
  const page = `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; script-src 'self'"><p>the page</p>`;
  writeFileSync(join(outer, "pages", "index.html"), page);
  served.publish(join(outer, "pages"));
  const { headers } = await asked("GET", new URL(address).host);
  expect(headers["content-security-policy"]).toBe(
    "default-src 'none'; script-src 'self'; frame-ancestors 'none'",
  );
  expect(headers["x-frame-options"]).toBe("DENY");
});

test("another address than last time is said with what it means for kept work; the same one is not", () => {
  const record = join(outer, "cache", "address");
  const [usual, other] = ["http://127.0.0.1:3000/", "http://127.0.0.1:40123/"];
  expect(otherAddress(usual, record)).toBe("");
  expect(otherAddress(usual, record)).toBe("");
  const said = otherAddress(other, record);
  expect(said).toContain(`last time (${usual})`);
  expect(said).toContain("work that the browser kept there is not shown here");
  expect(otherAddress(other, record)).toBe("");
  expect(otherAddress(usual, record)).toContain(`last time (${other})`);
});
