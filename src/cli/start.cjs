/**
 * Runs a TypeScript entry under Node: `node src/cli/start.cjs <entry.ts> [arguments]`.
 *
 * The entry is bundled on first use, in silence, and again whenever a file that went into the bundle has changed.
 * Bundles lie in the cache inside node_modules, a folder each, put in place by renaming: two processes that
 * build at the same time never see half a bundle. The record of a bundle names files by their place in the project:
 * in a copy of the project it means the copy.
 */
const { createHash } = require("node:crypto");
const fs = require("node:fs");
const path = require("node:path");

const root = path.resolve(__dirname, "../..");
const cache = path.join(root, "node_modules/.cache/blade-metallurgy/cli");

/** Files that shape every bundle without being imported by it. */
const ALWAYS = [
  "package.json",
  "package-lock.json",
  "tsconfig.json",
  "src/cli/start.cjs",
  "src/cli/bundle.cjs",
];

/** Size and time of each file, as one short text that changes when any of them does. */
function fingerprint(files) {
  const hash = createHash("sha256");
  for (const file of files) {
    const { mtimeMs, size } = fs.statSync(path.join(root, file));
    hash.update(`${file}\0${size}\0${mtimeMs}\n`);
  }
  return hash.digest("hex");
}

const bundleIn = (folder) => path.join(cache, folder, "bundle.cjs");

/** The bundle that the record points at, if nothing it was made from has changed since. */
function currentBundle(record) {
  try {
    const { files, print, folder } = JSON.parse(fs.readFileSync(record, "utf8"));
    const bundle = bundleIn(folder);
    return fingerprint(files) === print && fs.existsSync(bundle) ? bundle : undefined;
  } catch {
    return undefined;
  }
}

function replaceFile(file, text) {
  const draft = `${file}.${process.pid}`;
  fs.writeFileSync(draft, text);
  fs.renameSync(draft, file);
}

/** Puts a finished folder in its place, unless another process was first with the same one. */
function putInPlace(draft, folder) {
  try {
    fs.renameSync(draft, folder);
  } catch (fault) {
    if (!fs.existsSync(folder)) throw fault;
  }
}

/** Removes what earlier builds left, unless it is so young that another process may be about to load it. */
function sweep(prefix, kept) {
  const old = Date.now() - 3_600_000;
  for (const name of fs.readdirSync(cache)) {
    const file = path.join(cache, name);
    const isOurs = name.startsWith(prefix) && !name.endsWith(".json") && name !== kept;
    if (isOurs && fs.statSync(file).mtimeMs < old) fs.rmSync(file, { recursive: true, force: true });
  }
}

async function build(entry, record) {
  const { bundleEntry } = require("./bundle.cjs");
  const draft = fs.mkdtempSync(path.join(cache, "build-"));
  try {
    const sources = await bundleEntry(path.join(root, entry), draft);
    const files = [...ALWAYS, ...sources.map((file) => path.relative(root, file))];
    const print = fingerprint(files);
    const name = path.basename(record, ".json");
    const folder = `${name}.${print.slice(0, 16)}`;
    putInPlace(draft, path.join(cache, folder));
    sweep(`${name}.`, folder);
    replaceFile(record, JSON.stringify({ files, print, folder }));
    return bundleIn(folder);
  } finally {
    fs.rmSync(draft, { recursive: true, force: true });
  }
}

async function start(entry, rest) {
  const name = entry.replace(/\.ts$/, "").replace(/[^a-z0-9]+/gi, "-");
  const record = path.join(cache, `${name}.json`);
  fs.mkdirSync(cache, { recursive: true });
  const bundle = currentBundle(record) ?? (await build(entry, record));
  process.argv = [process.argv[0], path.join(root, entry), ...rest];
  require(bundle);
}

const [given, ...rest] = process.argv.slice(2);
if (given === undefined) {
  process.stderr.write("Usage: node src/cli/start.cjs <entry.ts> [arguments]\n");
  process.exitCode = 2;
} else {
  start(path.relative(root, path.resolve(given)), rest).catch((error) => {
    process.stderr.write(`${error.stack ?? error}\n`);
    process.exitCode = 70;
  });
}
