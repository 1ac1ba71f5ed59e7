const { createHash } = require("node:crypto");
const { Compilation, sources } = require("webpack");

/**
 * What a static host has to send, once, for every kind of configuration. Files keep their names from version to
 * version, so each is asked about again before it is used. Excel on the web reads functions.json from another origin, and
 * shows the pane in a frame: X-Frame-Options must not be sent.
 */
const EVERY_FILE = {
  "Cache-Control": "no-cache",
  "X-Content-Type-Options": "nosniff",
  "Referrer-Policy": "no-referrer",
};
const OF_METADATA = { "Access-Control-Allow-Origin": "*" };
const UNWANTED = "X-Frame-Options";

const KINDS = { json: "application/json", webmanifest: "application/manifest+json" };

const lines = (headers, line) => Object.entries(headers).map(([name, value]) => line(name, value));

/** The plain text that many static hosts read from the root of the site. */
function headersFile({ path, hasFunctions }) {
  const rule = (file, headers) => [`${path}${file}`, ...lines(headers, (name, value) => `  ${name}: ${value}`)];
  return [
    `# Read by static hosts at the root of the site only. Add no ${UNWANTED}: Excel on the web shows the pane in a frame.`,
    ...rule("/*", EVERY_FILE),
    ...(hasFunctions ? rule("/functions.json", OF_METADATA) : []),
    "",
  ].join("\n");
}

function apacheFile({ hasFunctions }) {
  const set = (headers) => lines(headers, (name, value) => `  Header always set ${name} "${value}"`);
  return [
    "# Apache HTTP Server, with mod_headers and mod_mime, where AllowOverride lets FileInfo through.",
    "<IfModule mod_mime.c>",
    ...Object.entries(KINDS).map(([ending, kind]) => `  AddType ${kind} .${ending}`),
    "</IfModule>",
    "<IfModule mod_headers.c>",
    ...set(EVERY_FILE),
    `  Header always unset ${UNWANTED}`,
    ...(hasFunctions ? ['<Files "functions.json">', ...set(OF_METADATA), "</Files>"] : []),
    "</IfModule>",
    "",
  ].join("\n");
}

function iisFile({ hasFunctions }) {
  // What a folder above has set would make the whole folder answer 500 if it were added twice.
  const set = (headers) =>
    lines(headers, (name, value) => `<remove name="${name}"/><add name="${name}" value="${value}"/>`);
  const custom = (content) => [
    "<system.webServer><httpProtocol><customHeaders>",
    ...content,
    "</customHeaders></httpProtocol></system.webServer>",
  ];
  const kinds = Object.entries(KINDS).map(
    ([ending, kind]) =>
      `<remove fileExtension=".${ending}"/><mimeMap fileExtension=".${ending}" mimeType="${kind}"/>`,
  );
  return [
    '<?xml version="1.0" encoding="utf-8"?>',
    "<!-- Internet Information Services. -->",
    "<configuration>",
    "<system.webServer><staticContent>",
    ...kinds,
    "</staticContent><httpProtocol><customHeaders>",
    ...set(EVERY_FILE),
    `<remove name="${UNWANTED}"/>`,
    "</customHeaders></httpProtocol></system.webServer>",
    ...(hasFunctions ? ['<location path="functions.json">', ...custom(set(OF_METADATA)), "</location>"] : []),
    "</configuration>",
    "",
  ].join("\n");
}

function nginxFile({ path, hasFunctions }) {
  const add = (headers, indent) => lines(headers, (name, value) => `${indent}add_header ${name} "${value}" always;`);
  // Its own mime.types knows json, and a second entry makes it warn.
  const kinds = Object.entries(KINDS)
    .filter(([ending]) => ending !== "json")
    .map(([ending, kind]) => `    ${kind} ${ending};`);
  // A location that adds a header of its own inherits none.
  const metadata = [
    `location = ${path}/functions.json {`,
    "  types { application/json json; }",
    ...add({ ...EVERY_FILE, ...OF_METADATA }, "  "),
    "}",
  ];
  return [
    `# nginx: goes into the server block of the site. Add no ${UNWANTED} anywhere above.`,
    `location ${path}/ {`,
    "  include mime.types;",
    "  types {",
    ...kinds,
    "  }",
    ...add(EVERY_FILE, "  "),
    "}",
    ...(hasFunctions ? metadata : []),
    "",
  ].join("\n");
}

/**
 * Configurations that make a static host send what the pages need, by file name.
 *
 * @param {{ path?: string, hasFunctions: boolean }} of - Path of the pages on the site, without a slash at its end; true
 *   for the add-in, false for the workbench alone.
 */
function kitFiles({ path = "", hasFunctions }) {
  const of = { path, hasFunctions };
  return {
    _headers: headersFile(of),
    ".htaccess": apacheFile(of),
    "web.config": iisFile(of),
    "nginx.conf.sample": nginxFile(of),
  };
}

/** What the page check.html asks for: every file of the build with its size and SHA-256. */
const FILE_LIST = "files.json";

/** Adds the configurations for static hosts and the list that the page check.html compares with what is served. */
class HostingKitPlugin {
  constructor({ host, version }) {
    this.host = host;
    this.version = version;
  }

  apply(compiler) {
    const name = "HostingKitPlugin";
    const stage = Compilation.PROCESS_ASSETS_STAGE_REPORT + 1;
    compiler.hooks.thisCompilation.tap(name, (compilation) => {
      compilation.hooks.processAssets.tap({ name, stage }, () => this.add(compilation));
    });
  }

  add(compilation) {
    const emit = (name, text) => compilation.emitAsset(name, new sources.RawSource(text), { minimized: true });
    const files = compilation
      .getAssets()
      .filter(({ name }) => !name.endsWith(".map"))
      .map(({ name, source }) => {
        const bytes = source.buffer();
        return { name, bytes: bytes.length, sha256: createHash("sha256").update(bytes).digest("hex") };
      })
      .sort((a, b) => (a.name < b.name ? -1 : 1));
    emit(FILE_LIST, `${JSON.stringify({ version: this.version, host: this.host, files }, null, 1)}\n`);
    const path = new URL(this.host).pathname.replace(/\/$/, "");
    for (const [name, text] of Object.entries(kitFiles({ path, hasFunctions: true }))) emit(name, text);
  }
}

module.exports = { EVERY_FILE, FILE_LIST, HostingKitPlugin, OF_METADATA, UNWANTED, kitFiles };
