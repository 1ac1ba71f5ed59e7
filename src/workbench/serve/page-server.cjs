const { createReadStream, existsSync, readFileSync, statSync } = require("node:fs");
const { createServer } = require("node:http");
const path = require("node:path");

const TYPES = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".map": "application/json",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".txt": "text/plain; charset=utf-8",
};

const BUILDING = `<!doctype html><html lang="en-GB"><head><meta charset="utf-8"><title>Workbench</title>
<meta http-equiv="refresh" content="1"><style>body{font:16px/1.5 system-ui,sans-serif;margin:3rem}</style></head>
<body><p>Building the workbench. This page opens by itself in a few seconds.</p></body></html>`;

/** Sent with everything: nobody may frame the page, guess types, or learn where a link was pressed. */
const GUARDS = {
  "X-Content-Type-Options": "nosniff",
  "X-Frame-Options": "DENY",
  "Referrer-Policy": "no-referrer",
  "Cross-Origin-Resource-Policy": "same-origin",
};
const NO_FRAMES = "frame-ancestors 'none'";

/** The policy that a page states for itself, as a header; framing can be forbidden in a header alone. */
function policyOf(file) {
  if (path.extname(file) !== ".html") return `default-src 'self'; ${NO_FRAMES}`;
  const stated = /http-equiv="?Content-Security-Policy"?\s+content="([^"]*)"/.exec(
    readFileSync(file, "utf8"),
  );
  return `${stated?.[1] ?? "default-src 'self'"}; ${NO_FRAMES}`;
}

/** Why a request is not answered: a page elsewhere may reach this machine under a name of its own. */
function refusalOf(server, { method, headers }) {
  const { port } = server.address();
  const isOwn = [`127.0.0.1:${port}`, `localhost:${port}`].includes(headers.host);
  if (!isOwn) return [421, "this server answers to its own address alone"];
  return method === "GET" || method === "HEAD" ? undefined : [405, "only pages are given here"];
}

/** The file an address asks for, or `undefined` where it leads out of the folder or to nothing. */
function fileFor(folder, address) {
  const { pathname } = new URL(address, "http://localhost");
  const name = pathname === "/" ? "index.html" : decodeURIComponent(pathname.slice(1));
  const file = path.resolve(folder, name);
  const inside = file.startsWith(folder + path.sep) && existsSync(file);
  return inside && statSync(file).isFile() ? file : undefined;
}

function send(response, status, type, text) {
  const policy = `default-src 'none'; style-src 'unsafe-inline'; ${NO_FRAMES}`;
  const headers = { ...GUARDS, "Content-Type": type, "Content-Security-Policy": policy };
  response.writeHead(status, { ...headers, "Cache-Control": "no-store" });
  response.end(text);
}

function sendFile(request, response, file) {
  const { mtimeMs, size } = statSync(file);
  const tag = `"${mtimeMs.toString(36)}-${size.toString(36)}"`;
  const headers = {
    ...GUARDS,
    ETag: tag,
    "Cache-Control": "no-cache",
    "Content-Security-Policy": policyOf(file),
  };
  if (request.headers["if-none-match"] === tag) {
    response.writeHead(304, headers);
    response.end();
    return;
  }
  response.writeHead(200, {
    ...headers,
    "Content-Length": size,
    "Content-Type": TYPES[path.extname(file)] ?? "application/octet-stream",
  });
  if (request.method === "HEAD") response.end();
  else
    createReadStream(file)
      // A build that begins meanwhile may take the file away.
      .on("error", () => response.destroy())
      .pipe(response);
}

/** Answers requests from a folder; until `publish(folder)` is called, with a page that waits. */
function pageServer() {
  let folder;
  const server = createServer((request, response) => {
    const refusal = refusalOf(server, request);
    if (refusal !== undefined) return send(response, refusal[0], "text/plain", refusal[1]);
    if (folder === undefined) return send(response, 200, TYPES[".html"], BUILDING);
    let file;
    try {
      file = fileFor(folder, request.url ?? "/");
    } catch {
      return send(response, 400, "text/plain", "bad address");
    }
    if (file === undefined) return send(response, 404, "text/plain", "not here");
    return sendFile(request, response, file);
  });
  return {
    server,
    publish: (built) => {
      folder = built;
    },
  };
}

/** Listens on this machine only: on the wanted port, or on any free one where it is taken. */
function listen(server, wanted) {
  return new Promise((resolve, reject) => {
    server.once("error", (fault) => {
      if (fault.code !== "EADDRINUSE" || wanted === 0) reject(fault);
      else resolve(listen(server, 0));
    });
    server.listen(wanted, "127.0.0.1", () => resolve(`http://127.0.0.1:${server.address().port}/`));
  });
}

module.exports = { listen, pageServer };
