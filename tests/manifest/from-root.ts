import { createRequire } from "node:module";
import { resolve } from "node:path";

/** Requires what is no module of ours, by its path from the root: a bundle made of a test tool stands elsewhere. */
export const fromRoot = createRequire(resolve(process.cwd(), "package.json"));
