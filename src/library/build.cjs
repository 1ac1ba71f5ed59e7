const { execFileSync } = require("node:child_process");
const fs = require("node:fs");
const path = require("node:path");
const manifest = require("../../package.json");
const { declaredNames, withLinks } = require("./links.cjs");

/**
 * `npm run build:library`: core and functions as ES modules without dependencies, a file a module so that a bundler
 * leaves out what is not used, with their declarations, as a package of its own in `dist/library`.
 */
const root = path.resolve(__dirname, "../..");
const out = path.join(root, "dist/library");
const ENTRIES = ["core/index", "functions/index"];

async function scripts() {
  const { rolldown } = await import("rolldown");
  const bundle = await rolldown({
    input: Object.fromEntries(ENTRIES.map((entry) => [entry, path.join(root, `src/${entry}.ts`)])),
    cwd: root,
    platform: "neutral",
    tsconfig: path.join(root, "tsconfig.json"),
  });
  await bundle.write({
    dir: out,
    format: "esm",
    preserveModules: true,
    preserveModulesRoot: path.join(root, "src"),
    entryFileNames: "[name].js",
  });
  await bundle.close();
}

const IMPORTED = /(from "|import\(")(\.{1,2}(?:\/[^"]+)?)(")/g;

/** Node asks for the ending of a file, which our sources leave out: `./find` becomes `./find.js`, a folder its index. */
function withEndings(file) {
  const reached = [];
  const named = (_, before, to, after) => {
    const target = path.resolve(path.dirname(file), to);
    const isFile = fs.existsSync(`${target}.d.ts`);
    reached.push(isFile ? `${target}.d.ts` : path.join(target, "index.d.ts"));
    return `${before}${to}${isFile ? "" : "/index"}.js${after}`;
  };
  const text = fs.readFileSync(file, "utf8");
  fs.writeFileSync(file, text.replace(IMPORTED, named));
  return reached;
}

/** Only declarations that the entries lead to are kept: the compiler writes one for every source file. */
function declarations() {
  const compiler = path.join(root, "node_modules/typescript/bin/tsc");
  execFileSync(process.execPath, [compiler, "-p", path.join(root, "src/library")], { stdio: "inherit" });
  const made = fs.readdirSync(out, { recursive: true }).map((name) => path.join(out, String(name)));
  const all = made.filter((file) => file.endsWith(".d.ts"));
  const declared = declaredNames(all);
  const kept = new Set(ENTRIES.map((entry) => path.join(out, `${entry}.d.ts`)));
  for (const file of kept) {
    withLinks(file, declared);
    for (const reached of withEndings(file)) kept.add(reached);
  }
  for (const file of all) if (!kept.has(file)) fs.rmSync(file);
}

/** The manifest of the package: the repository's own holds scripts and tools that no user of the library needs. */
function packageManifest() {
  const { name, version, license, engines } = manifest;
  const own = JSON.stringify({ types: manifest.types, exports: manifest.exports });
  const { types, exports } = JSON.parse(own.replaceAll("./dist/library/", "./"));
  return {
    name,
    version,
    description:
      "Blade metallurgy for programs: steels, hardening, tempering, mass and balance of blades, cutting plans and cost of a run, each answer with its range, expected error and source",
    keywords: [
      "metallurgy",
      "steel",
      "knife",
      "blade",
      "heat-treatment",
      "tempering",
      "hardness",
      "cutting-stock",
    ],
    license,
    engines,
    type: "module",
    sideEffects: false,
    main: exports["."].default,
    types,
    exports,
  };
}

/** What a package needs beside its code; its README is the page of the library, with the pages that it links. */
const PAGES = {
  LICENSE: "LICENSE",
  NOTICE: "src/library/NOTICE",
  "README.md": "assets/help/library.md",
  "functions.md": "assets/help/functions.md",
  "accuracy.md": "assets/help/accuracy.md",
};

async function build() {
  fs.rmSync(out, { recursive: true, force: true });
  await scripts();
  declarations();
  fs.writeFileSync(path.join(out, "package.json"), `${JSON.stringify(packageManifest(), null, 2)}\n`);
  for (const [name, from] of Object.entries(PAGES))
    fs.copyFileSync(path.join(root, from), path.join(out, name));
}

build().catch((fault) => {
  console.error(fault);
  process.exitCode = 1;
});
