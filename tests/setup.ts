import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync } from "node:fs";
import { createRequire } from "node:module";
import { join, resolve } from "node:path";
import type { TestProject } from "vitest/node";
import type { Configuration, Stats } from "webpack";

declare module "vitest" {
  export interface ProvidedContext {
    /** Folder of the built pages: as in production, but with the npm copy of office.js. */
    pages: string;
  }
}

const ROOT = resolve(import.meta.dirname, "..");
const CACHE = join(ROOT, "node_modules/.cache/blade-metallurgy/pages");
const INPUTS = ["src", "manifest", "assets", "webpack.config.js", "package.json", "package-lock.json"];

const require = createRequire(import.meta.url);
const webpack: typeof import("webpack") = require("webpack");

function filesBelow(path: string): string[] {
  if (!statSync(path).isDirectory()) return [path];
  return readdirSync(path)
    .sort()
    .flatMap((name) => filesBelow(join(path, name)));
}

/** Changes when any file that a page is made from changes. */
function fingerprint(): string {
  const hash = createHash("sha256");
  for (const file of INPUTS.flatMap((input) => filesBelow(join(ROOT, input)))) {
    hash.update(file).update(readFileSync(file));
  }
  return hash.digest("hex").slice(0, 16);
}

async function build(out: string): Promise<void> {
  delete process.env.ADDIN_HOST;
  const makeConfig: (env: object, argv: object) => Promise<Configuration> = require("../webpack.config.js");
  const config = await makeConfig({ office: "npm", quiet: true, out }, { mode: "production" });
  const stats = await new Promise<Stats | undefined>((done, failed) =>
    webpack(config, (problem, result) => (problem === null ? done(result) : failed(problem))),
  );
  if (stats?.hasErrors() === true) throw new Error(stats.toString({ all: false, errors: true }));
}

/** The built pages, made anew only where a file they are made from has changed. */
async function builtPages(): Promise<string> {
  const folder = join(CACHE, fingerprint());
  if (existsSync(folder)) return folder;
  const making = `${folder}.${process.pid}`;
  await build(making);
  mkdirSync(CACHE, { recursive: true });
  // Another run may have made the same pages meanwhile: its folder serves as well.
  if (existsSync(folder)) rmSync(making, { recursive: true });
  else renameSync(making, folder);
  dropOld(folder);
  return folder;
}

/** Pages of earlier states, kept for an hour for runs that may still use them. */
function dropOld(kept: string): void {
  for (const name of readdirSync(CACHE)) {
    const path = join(CACHE, name);
    if (path !== kept && Date.now() - statSync(path).mtimeMs > 3_600_000) rmSync(path, { recursive: true });
  }
}

/** Run once before the tests that need built pages. */
export async function setup(project: TestProject): Promise<void> {
  project.provide("pages", await builtPages());
}
