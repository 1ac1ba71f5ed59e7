const { createHash } = require("node:crypto");
const { readFileSync } = require("node:fs");
const path = require("node:path");
const { Compilation, sources } = require("webpack");
const { kitFiles } = require("../../../manifest/hosting-kit.cjs");

const ASSETS = path.resolve(__dirname, "../../../assets");
const ICONS = [32, 64, 80];

const MANIFEST = {
  name: "Blade Metallurgy workbench",
  short_name: "Blade Metallurgy",
  description: "Plans a production run of blades: steel, hardening, temper, mass, stock and cost.",
  start_url: "./",
  scope: "./",
  display: "standalone",
  background_color: "#f3f4f2",
  theme_color: "#1d5a74",
  icons: [
    { src: "icon.svg", sizes: "any", type: "image/svg+xml" },
    ...ICONS.map((size) => ({ src: `icon-${size}.png`, sizes: `${size}x${size}`, type: "image/png" })),
  ],
};

/** The page names its manifest and lets its own worker in; all else of its policy stays as it is. */
function installable(page) {
  const changed = page
    .replace(/(default-src 'none'; )/, "$1worker-src 'self'; manifest-src 'self'; ")
    .replace('href="data:,"', 'href="icon-32.png"')
    .replace("</head>", '  <link rel="manifest" href="workbench.webmanifest">\n  </head>');
  if (!changed.includes("manifest-src")) throw new Error("the page has no policy to add to");
  return changed;
}

/** What has to be kept for the page to open without a network. */
const isNeeded = (name) => !/\.map$|^licences\.txt$/.test(name);

/** Adds what a page on a static host needs beside the workbench's own files. */
class StaticFiles {
  apply(compiler) {
    compiler.hooks.thisCompilation.tap("StaticFiles", (compilation) => {
      const stage = Compilation.PROCESS_ASSETS_STAGE_REPORT + 1;
      compilation.hooks.processAssets.tap({ name: "StaticFiles", stage }, () => this.add(compilation));
    });
  }

  add(compilation) {
    const emit = (name, content) =>
      compilation.emitAsset(name, new sources.RawSource(content), { minimized: true });
    const page = compilation.getAsset("index.html").source.source().toString();
    compilation.updateAsset("index.html", new sources.RawSource(installable(page)));
    emit("workbench.webmanifest", JSON.stringify(MANIFEST, null, 2));
    for (const icon of ["icon.svg", ...ICONS.map((size) => `icon-${size}.png`)]) {
      emit(icon, readFileSync(path.join(ASSETS, icon)));
    }
    emit("service-worker.js", this.worker(compilation));
    for (const [name, text] of Object.entries(kitFiles({ hasFunctions: false }))) emit(name, text);
  }

  worker(compilation) {
    const needed = compilation.getAssets().filter(({ name }) => isNeeded(name));
    const files = needed.map(({ name }) => name);
    const hash = createHash("sha256");
    for (const { name, source } of needed) hash.update(name).update(source.buffer());
    const version = hash.digest("hex").slice(0, 16);
    const text = readFileSync(path.join(__dirname, "service-worker.js"), "utf8");
    return `const VERSION = ${JSON.stringify(version)};\nconst FILES = ${JSON.stringify(files)};\n${text}`;
  }
}

module.exports = { StaticFiles };
