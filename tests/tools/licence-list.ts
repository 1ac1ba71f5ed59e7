import { existsSync, readFileSync } from "node:fs";

/** One package of the lockfile with its licence. */
export interface Licensed {
  readonly name: string;
  readonly version: string;
  readonly licence: string;
}

interface Locked {
  readonly version?: string;
  readonly license?: string;
}

/** Licences whose terms are met by naming them; those of tools that never leave the machine included. */
export const ACCEPTED: readonly string[] = [
  "MIT",
  "Apache-2.0",
  "BSD-2-Clause",
  "BSD-3-Clause",
  "ISC",
  "0BSD",
  "MPL-2.0",
  "BlueOak-1.0.0",
];

/** Packages whose licence is accepted for a reason of its own. */
export const EXCEPTIONS: Readonly<Record<string, string>> = {
  "@microsoft/office-js": "Microsoft's own terms: loaded from Microsoft's address, never shipped",
  "@univerjs/telemetry": "names no licence in its package.json; its LICENSE file is Apache-2.0",
  "caniuse-lite": "CC-BY-4.0: data that the build reads, not shipped",
};

/** The licence a package.json names where the lockfile names none. */
function namedByPackage(path: string): string {
  const file = `${path}/package.json`;
  if (!existsSync(file)) return "";
  return (JSON.parse(readFileSync(file, "utf8")) as { license?: string }).license ?? "";
}

/** Every package of the lockfile. */
export function licensed(): Licensed[] {
  const { packages } = JSON.parse(readFileSync("package-lock.json", "utf8")) as {
    readonly packages: Readonly<Record<string, Locked>>;
  };
  return Object.entries(packages)
    .filter(([path]) => path !== "")
    .map(([path, { version = "", license }]) => ({
      name: path.replace(/^.*node_modules\//, ""),
      version,
      licence: license ?? namedByPackage(path),
    }))
    .sort((a, b) => (a.name < b.name ? -1 : 1));
}

/** Whether one of the licences to choose from is accepted; all of those that apply together must be. */
export function isAccepted(licence: string): boolean {
  const plain = licence.replace(/[()]/g, "");
  return plain
    .split(" OR ")
    .some((choice) => choice.split(" AND ").every((one) => ACCEPTED.includes(one.trim())));
}

/** Packages whose licence is neither accepted nor excepted. */
export function refusedLicences(all: readonly Licensed[] = licensed()): Licensed[] {
  return all.filter(({ name, licence }) => !isAccepted(licence) && EXCEPTIONS[name] === undefined);
}
