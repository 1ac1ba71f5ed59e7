import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";

interface Locked {
  readonly version?: string;
  readonly integrity?: string;
  readonly resolved?: string;
  readonly link?: boolean;
  readonly hasInstallScript?: boolean;
}

const lock = JSON.parse(readFileSync("package-lock.json", "utf8")) as {
  readonly lockfileVersion: number;
  readonly packages: Readonly<Record<string, Locked>>;
};
const project = JSON.parse(readFileSync("package.json", "utf8")) as {
  readonly dependencies?: Readonly<Record<string, string>>;
  readonly devDependencies: Readonly<Record<string, string>>;
};
const packages = Object.entries(lock.packages).filter(([path]) => path !== "");

describe("lockfile", () => {
  test("every package is held to its content", () => {
    expect(packages.length).toBeGreaterThan(500);
    expect(packages.filter(([, { link }]) => link === true)).toEqual([]);
    const loose = packages.filter(
      ([, { integrity }]) => !/^sha512-[A-Za-z0-9+/]{86}==$/.test(integrity ?? ""),
    );
    expect(loose.map(([path]) => path)).toEqual([]);
  });

  test("no address of a registry is written down", () => {
    expect(packages.filter(([, { resolved }]) => resolved !== undefined).map(([path]) => path)).toEqual([]);
    expect(readFileSync("package-lock.json", "utf8")).not.toMatch(
      /https?:\/\/(?!.*(funding|sponsors|opencollective))[^"]*registry/,
    );
  });

  test("nothing runs on installing but what is known", () => {
    // protobufjs prints a notice about its version scheme, nothing else.
    const running = packages.filter(([, { hasInstallScript }]) => hasInstallScript === true);
    expect(running.map(([path]) => path.replace(/^.*node_modules\//, ""))).toEqual(["protobufjs"]);
  });
});

test("package.json asks for exact versions and ships no dependency", () => {
  expect(project.dependencies ?? {}).toEqual({});
  for (const [name, version] of Object.entries(project.devDependencies)) {
    expect(version, name).toMatch(/^\d+\.\d+\.\d+(-[\w.]+)?$/);
    expect(lock.packages[`node_modules/${name}`]?.version, name).toBe(version);
  }
});
