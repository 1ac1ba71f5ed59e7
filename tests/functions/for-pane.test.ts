import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname, join, normalize } from "node:path";
import { expect, test } from "vitest";
import { forPane } from "../../src/functions/for-pane";

const ROOT = "src";

/** Modules that a module imports for more than their types, as paths below `src` without their ending. */
function imported(path: string): string[] {
  const code = readFileSync(join(ROOT, path), "utf8");
  const found = [...code.matchAll(/(?:^|\n)(?:import|export)\s+(?!type\b)([^;]*?)\sfrom\s+"(\.[^"]+)"/g)]
    .filter(([, names = ""]) => !/^\{(\s*type [^,}]+,?)+\s*\}$/.test(names))
    .map(([, , from]) => from as string);
  const late = [...code.matchAll(/import\(\s*(?:\/\*[^*]*\*\/\s*)?"(\.[^"]+)"/g)].map(
    ([, from]) => from as string,
  );
  return [...found, ...late].map((from) => {
    const name = normalize(join(dirname(path), from)).replaceAll("\\", "/");
    return existsSync(join(ROOT, `${name}.ts`)) ? name : `${name}/index`;
  });
}

function reached(entry: string): Set<string> {
  const seen = new Set<string>();
  const due = [entry];
  for (let name = due.pop(); name !== undefined; name = due.pop()) {
    if (seen.has(name) || !existsSync(join(ROOT, `${name}.ts`))) continue;
    seen.add(name);
    due.push(...imported(`${name}.ts`));
  }
  return seen;
}

const inFunctions = reached("host/register");
const inPane = [...reached("taskpane/index")].filter((name) => !inFunctions.has(name));

/** Modules of functions.js that the pane's own modules import. */
const shared = [...new Set(inPane.flatMap((name) => imported(`${name}.ts`)))].filter(
  (name) => inFunctions.has(name) && /^(core|functions)\//.test(name),
);

test("whatever the pane reads of core and functions stands in the face that functions.js gives it", () => {
  expect(shared.length).toBeGreaterThan(20);
  expect(Object.keys(forPane).sort()).toEqual(shared.sort());
});

test("the face holds the modules under their own paths, none empty", () => {
  const files = readdirSync(ROOT, { recursive: true }).map((name) => String(name).replaceAll("\\", "/"));
  for (const [name, held] of Object.entries(forPane)) {
    expect(files).toContain(`${name}.ts`);
    expect(Object.keys(held).length, name).toBeGreaterThan(0);
  }
});
