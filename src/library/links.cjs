const fs = require("node:fs");
const path = require("node:path");

/**
 * A docstring links a relation that its file imports for its code alone; the compiler leaves such an import out of the
 * declarations, and the link leads nowhere. Here the import is put back, as one of a type.
 */

const LINK = /\{@link (\w+)\}/g;

/** The file that declares each name, where there is one only. */
function declaredNames(files) {
  const found = new Map();
  for (const file of files) {
    const text = fs.readFileSync(file, "utf8");
    for (const [, name] of text.matchAll(
      /^export (?:declare )?(?:const|function|type|interface|class) (\w+)/gm,
    ))
      found.set(name, found.has(name) ? undefined : file);
  }
  return found;
}

/** True for a name that is declared or imported in a declaration file. */
function isInScope(text, name) {
  const code = text.replace(/\/\*[\s\S]*?\*\//g, "");
  return new RegExp(`(?:const|function|type|interface|class|[{,]) ${name}\\b`).test(code);
}

/** Imports what the links of a file name and its code does not; a name that nothing declares is no link. */
function withLinks(file, declared) {
  const text = fs.readFileSync(file, "utf8");
  const names = new Set([...text.matchAll(LINK)].map(([, name]) => name));
  const unknown = [...names].filter((name) => !isInScope(text, name));
  if (unknown.length === 0) return;
  const imports = unknown.flatMap((name) => {
    const target = declared.get(name);
    if (target === undefined) return [];
    const to = path.relative(path.dirname(file), target).replaceAll(path.sep, "/").slice(0, -".d.ts".length);
    return [`import type { ${name} } from "${to.startsWith(".") ? to : `./${to}`}";\n`];
  });
  const plain = text.replace(LINK, (link, name) =>
    unknown.includes(name) && declared.get(name) === undefined ? `\`${name}\`` : link,
  );
  fs.writeFileSync(file, imports.join("") + plain);
}

module.exports = { declaredNames, withLinks };
