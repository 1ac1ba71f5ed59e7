const { existsSync, readdirSync, readFileSync } = require("node:fs");
const path = require("node:path");
const { Compilation, sources } = require("webpack");

const PACKAGES = path.resolve(__dirname, "../node_modules");
const FILE = "licences.txt";

const HEAD = `Licences of what these pages contain besides Blade Metallurgy itself (MIT licence).
Packages with the same text stand together above it.`;

/** The package that a module's file belongs to: `d3-scale`, `@scope/name`. */
function packageOf(resource) {
  const inside = resource.split(`node_modules${path.sep}`).at(-1);
  if (inside === resource) return undefined;
  const [first, second] = inside.split(path.sep);
  return first.startsWith("@") ? `${first}/${second}` : first;
}

function described(name) {
  const folder = path.join(PACKAGES, name);
  const { version, license, author, dependencies = {} } = JSON.parse(
    readFileSync(path.join(folder, "package.json"), "utf8"),
  );
  const file = readdirSync(folder).find((entry) => /^(licen[cs]e|copying)/i.test(entry));
  const text = file === undefined ? "" : readFileSync(path.join(folder, file), "utf8").trim();
  const by = typeof author === "object" ? author?.name : author;
  return { line: `${name} ${version}: ${license}${by ? `, ${by}` : ""}`, text, dependencies: Object.keys(dependencies) };
}

/** Packages with all that they depend on, which their own bundles may contain. */
function withDependencies(names) {
  const all = new Set();
  const add = (name) => {
    if (all.has(name) || !existsSync(path.join(PACKAGES, name, "package.json"))) return;
    all.add(name);
    described(name).dependencies.forEach(add);
  };
  names.forEach(add);
  return [...all];
}

/** The notices, one block a text. */
function noticesOf(names) {
  const byText = new Map();
  for (const { line, text } of [...names].sort().map(described)) {
    byText.set(text, [...(byText.get(text) ?? []), line]);
  }
  const blocks = [...byText].map(([text, lines]) => `${lines.join("\n")}\n\n${text || "(the package comes without a text)"}`);
  return `${[HEAD, ...blocks].join(`\n\n${"-".repeat(72)}\n\n`)}\n`;
}

function modulesIn(compilation) {
  return [...compilation.modules].flatMap((module) => [module, ...(module.modules ?? [])]);
}

/**
 * Writes `licences.txt` beside the pages: the licence of every package that a bundle contains.
 *
 * @param ready - Packages whose ready-made bundles are added as they are.
 */
class LicencesPlugin {
  constructor({ ready = [] } = {}) {
    this.ready = ready;
  }

  apply(compiler) {
    compiler.hooks.thisCompilation.tap("LicencesPlugin", (compilation) => {
      const stage = Compilation.PROCESS_ASSETS_STAGE_REPORT;
      compilation.hooks.processAssets.tap({ name: "LicencesPlugin", stage }, () => {
        const compiled = modulesIn(compilation).flatMap(({ resource }) => {
          const name = resource === undefined ? undefined : packageOf(resource);
          // Of a style sheet's loader nothing but the style reaches the page.
          return name === undefined || /^(css-loader|mini-css-extract-plugin)$/.test(name) ? [] : [name];
        });
        const names = new Set([...compiled, ...withDependencies(this.ready)]);
        compilation.emitAsset(FILE, new sources.RawSource(noticesOf(names)), { minimized: true });
      });
    });
  }
}

module.exports = { LicencesPlugin, noticesOf, withDependencies };
