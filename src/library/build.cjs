const { execFileSync } = require("node:child_process");
const fs = require("node:fs");
const path = require("node:path");

/**
 * `npm run build:library`: core and functions as ES modules without dependencies, with their declarations, in
 * `dist/library`.
 */
const root = path.resolve(__dirname, "../..");
const out = path.join(root, "dist/library");

async function scripts() {
  const { rolldown } = await import("rolldown");
  const input = {
    index: path.join(root, "src/core/index.ts"),
    functions: path.join(root, "src/functions/index.ts"),
  };
  const bundle = await rolldown({
    input,
    cwd: root,
    platform: "neutral",
    tsconfig: path.join(root, "tsconfig.json"),
  });
  await bundle.write({
    dir: out,
    format: "esm",
    entryFileNames: "[name].js",
    chunkFileNames: "shared-[hash].js",
  });
  await bundle.close();
}

/** Node asks for the ending of a file, which our sources leave out: `./find` becomes `./find.js`, a folder its index. */
function withEndings(file) {
  const named = (_, before, to, after) => {
    const target = path.resolve(path.dirname(file), to);
    const whole = fs.existsSync(`${target}.d.ts`) ? `${to}.js` : `${to}/index.js`;
    return before + whole + after;
  };
  const text = fs.readFileSync(file, "utf8");
  fs.writeFileSync(file, text.replace(/(from "|import\(")(\.{1,2}(?:\/[^"]+)?)(")/g, named));
}

function declarations() {
  const compiler = path.join(root, "node_modules/typescript/bin/tsc");
  execFileSync(process.execPath, [compiler, "-p", path.join(root, "src/library")], { stdio: "inherit" });
  const made = fs.readdirSync(out, { recursive: true }).map((name) => path.join(out, String(name)));
  for (const file of made.filter((name) => name.endsWith(".d.ts"))) withEndings(file);
}

async function build() {
  fs.rmSync(out, { recursive: true, force: true });
  await scripts();
  declarations();
  fs.writeFileSync(path.join(out, "package.json"), '{ "type": "module" }\n');
}

build().catch((fault) => {
  console.error(fault);
  process.exitCode = 1;
});
