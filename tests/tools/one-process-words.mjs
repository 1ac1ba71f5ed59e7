/**
 * What tests take from vitest, for tests that are bundled and run again and again in one process: the words that name
 * tests, and its own `expect`. Setting up a worker for each planted fault takes longer than the tests of a part.
 */
import { createRequire } from "node:module";
import { pathToFileURL } from "node:url";

const fromVitest = createRequire(createRequire(import.meta.url).resolve("vitest/package.json"));
const load = (name) => import(pathToFileURL(fromVitest.resolve(name)).href);
const [
  chai,
  { ASYMMETRIC_MATCHERS_OBJECT, customMatchers, JestAsymmetricMatchers, JestChaiExpect, JestExtend },
] = await Promise.all([load("chai"), load("@vitest/expect")]);

for (const plugin of [JestExtend, JestChaiExpect, JestAsymmetricMatchers]) chai.use(plugin);

export const expect = (value, message) => chai.expect(value, message);
Object.assign(expect, chai.expect, globalThis[ASYMMETRIC_MATCHERS_OBJECT]);
if (customMatchers !== undefined) chai.expect.extend(expect, customMatchers);

/** The tests that were named so far, and the file whose tests are being named. */
export const state = { file: "", tests: [], before: [] };
const groups = [];

const formatted = (name, row, at) => {
  let next = 0;
  return name
    .replace(/%#/g, String(at))
    .replace(/%[sdijoOf]/g, () => String(row[next++]))
    .replace(/\$(\w+)/g, (all, key) =>
      Array.isArray(row[0]) || row[0] === null ? all : String(row[0]?.[key] ?? all),
    );
};

function named(name, body) {
  const title = [...groups, name].join(" ");
  state.tests.push({ id: `${state.file}#${title}`, name: title, file: state.file, body });
}
named.each = (rows) => (name, body) =>
  rows.forEach((row, at) => {
    const given = Array.isArray(row) ? row : [row];
    named(`${formatted(name, given, at)} (${at})`, () => body(...given));
  });

export const it = named;
export const test = named;

export function describe(name, body) {
  groups.push(name);
  body();
  groups.pop();
}

/** Once, before the first test of its file. */
export function beforeAll(body) {
  state.before.push({ file: state.file, body, isDone: false });
}

/** What tests leave behind goes with the process. */
export const afterAll = () => undefined;
