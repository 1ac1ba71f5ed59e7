const { readFileSync } = require("node:fs");
const { relative, resolve } = require("node:path");

const ROOT = resolve(__dirname, "../src");
const FACE = resolve(ROOT, "functions/for-pane.ts");

/** Folders whose code loads after the functions and may read them. */
const AFTER_THE_FUNCTIONS = /src[\\/](taskpane|formula|workbook|engine|host)[\\/]/;
/** Parts of functions.js themselves. */
const OF_THE_FUNCTIONS = /host[\\/](register|custom-function)\.ts$/;

/** The modules that the face holds, by the keys of its object. */
function held() {
  return new Set([...readFileSync(FACE, "utf8").matchAll(/^ {2}"([^"]+)":/gm)].map(([, name]) => name));
}

/**
 * Lets the pane read the modules of `src/functions/for-pane.ts` from functions.js, which has run before it, in place
 * of sharing them one by one: webpack joins only modules that no other bundle imports, and what is not joined weighs
 * 5 kB (gzip) more.
 */
function throughTheFace() {
  const modules = held();
  return ({ context, request, contextInfo: { issuer } }, done) => {
    if (!request.startsWith(".") || !AFTER_THE_FUNCTIONS.test(issuer) || OF_THE_FUNCTIONS.test(issuer)) return done();
    const name = relative(ROOT, resolve(context, request)).replaceAll("\\", "/");
    return modules.has(name) ? done(null, `var BladeMetallurgy.forPane["${name}"]`) : done();
  };
}

module.exports = { throughTheFace };
