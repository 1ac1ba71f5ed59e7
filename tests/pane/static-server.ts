import { createReadStream, existsSync, statSync } from "node:fs";
import { createServer, type Server, type ServerResponse } from "node:http";
import type { AddressInfo } from "node:net";
import { extname, join, normalize } from "node:path";

const KINDS: Readonly<Record<string, string>> = {
  ".css": "text/css",
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript",
  ".json": "application/json",
  ".png": "image/png",
};

export interface ServedFolder {
  /** Without a slash at the end. */
  readonly address: string;
  readonly close: () => void;
}

function answer(folder: string, path: string, response: ServerResponse): void {
  const file = join(folder, normalize(decodeURIComponent(path)));
  if (!file.startsWith(folder) || !existsSync(file) || !statSync(file).isFile()) {
    response.writeHead(404).end();
    return;
  }
  response.writeHead(200, { "Content-Type": KINDS[extname(file)] ?? "application/octet-stream" });
  createReadStream(file).pipe(response);
}

/** Serves a folder of files on a free local port. */
export async function serveFolder(folder: string): Promise<ServedFolder> {
  const server: Server = createServer((request, response) => {
    answer(folder, new URL(request.url ?? "/", "http://localhost").pathname, response);
  });
  await new Promise<void>((listening) => server.listen(0, "127.0.0.1", listening));
  const { port } = server.address() as AddressInfo;
  return { address: `http://127.0.0.1:${port}`, close: () => server.close() };
}
