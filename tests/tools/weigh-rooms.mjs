/**
 * `node tests/tools/weigh-rooms.mjs [DEPTH]`: what each room puts into the functions bundle, minified and gzipped on
 * its own, heaviest first. Joined they weigh less, since rooms share words: the last line says how much.
 */
import { readFileSync } from "node:fs";
import { relative, resolve } from "node:path";
import { gzipSync } from "node:zlib";
import { rolldown } from "rolldown";
import { minifySync } from "rolldown/utils";

const ROOT = resolve(import.meta.dirname, "../..");
/** What the build leaves out of tables, as `tables` of webpack.config.js does. */
const FOR_READERS = ["note", "seen", "quality", "errata"];
const OPEN_LICENCE = /CC|LGPL|MIT|Apache/;

function withoutTerms(sources) {
  for (const source of Object.values(sources)) if (!OPEN_LICENCE.test(source.licence)) delete source.licence;
}

function withoutNotes(table, id) {
  for (const part of FOR_READERS) delete table[part];
  if (/\/(hardness|inspection)\//.test(id) || !("rows" in table && "columns" in table)) return;
  delete table.title;
  table.columns = Object.keys(table.columns).map(() => 0);
}

function shortened(id) {
  const table = JSON.parse(readFileSync(id, "utf8"));
  if (id.includes("/sources/")) withoutTerms(table);
  else withoutNotes(table, id);
  return `export default ${JSON.stringify(table)}`;
}

const tables = {
  name: "tables",
  transform: (_, id) => (/src\/data\/.*\.json$/.test(id) ? { code: shortened(id), moduleType: "js" } : null),
};

function weight(code) {
  const minified = minifySync("room.js", code, { compress: { unused: "keep_assign" }, mangle: true }).code;
  return gzipSync(minified, { level: 9 }).length;
}

const bundle = await rolldown({
  input: resolve(ROOT, "src/host/register.ts"),
  cwd: ROOT,
  plugins: [tables],
  logLevel: "silent",
});
const { output } = await bundle.generate({ format: "es", minify: true });
const depth = Number(process.argv[2] ?? 3);
const rooms = new Map();
for (const [id, { code }] of Object.entries(output[0].modules)) {
  const room = relative(ROOT, id).split("/").slice(0, depth).join("/");
  rooms.set(room, `${rooms.get(room) ?? ""}\n${code ?? ""}`);
}
const weighed = [...rooms].map(([room, code]) => [room, weight(code)]).sort(([, a], [, b]) => b - a);
for (const [room, bytes] of weighed) console.log(`${(bytes / 1000).toFixed(1).padStart(6)} kB  ${room}`);
const sum = weighed.reduce((all, [, bytes]) => all + bytes, 0);
const joined = gzipSync(output[0].code, { level: 9 }).length;
console.log(`${(sum / 1000).toFixed(1)} kB apart, ${(joined / 1000).toFixed(1)} kB joined`);
