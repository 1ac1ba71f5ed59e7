import { createRequire } from "node:module";

const require = createRequire(import.meta.url);
const { OfficeMockObject } = require("office-addin-mock");

/** What a mock object is made from; its functions see the mock itself as `this`. */
export type Seed = Readonly<Record<string, unknown>>;

// biome-ignore lint/suspicious/noExplicitAny: a mock has the members of whatever it was made from
export type Mock = any;

class HostProblem extends Error {
  constructor(readonly code: string) {
    super(code);
  }
}

/** An error of Excel's own with a code. */
export const hostProblem = (code: string) => new HostProblem(code);

function isSeed(value: unknown): value is Seed {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

/** `isNullObject` needs no loading in Excel; the mock would want it loaded. Lists keep the mocks they name. */
function putAsIs(mock: Mock, seed: Seed): void {
  for (const [name, value] of Object.entries(seed)) {
    if (name === "isNullObject") mock[name] = value;
    else if (isSeed(value)) putAsIs(mock[name], value);
  }
}

/**
 * Puts the vendor's mock in the place of Excel: what is read before it was loaded and synchronised reads as a
 * sentence about that, so that it cannot pass for a value.
 *
 * @param workbook - Objects and methods of the workbook.
 * @param newest - The newest set `1.x` of the interface that this Excel knows, by its second number.
 */
export function playExcel(workbook: Seed, newest: number): { workbook: Mock; runs: unknown[] } {
  const seed = { context: { workbook } };
  const mock = new OfficeMockObject(seed, "excel");
  putAsIs(mock, seed);
  const runs: unknown[] = [];
  const run = async (first: unknown, second?: unknown) => {
    const task = (second ?? first) as (context: Mock) => Promise<unknown>;
    if (second !== undefined) runs.push(first);
    return task(mock.context);
  };
  const isSetSupported = (_: string, set: string) => Number(set.split(".")[1]) <= newest;
  const listeners = new Set<() => void>();
  const document = {
    addHandlerAsync: (_: string, changed: () => void) => listeners.add(changed),
    removeHandlerAsync: (_: string, { handler }: { handler: () => void }) => listeners.delete(handler),
    listeners,
  };
  Object.assign(globalThis, {
    Excel: { run },
    OfficeExtension: { Error: HostProblem },
    Office: {
      context: {
        requirements: { isSetSupported },
        document,
        officeTheme: { bodyBackgroundColor: "#1f1f1f" },
      },
      EventType: { DocumentSelectionChanged: "documentSelectionChanged" },
    },
  });
  return { workbook: mock.context.workbook, runs };
}

/** An object that is not there. */
export const NOTHING: Seed = { isNullObject: true, name: "", load: () => undefined };

/** A range: values of the members that the tests read, and those that the documented interface has besides. */
export function range(seed: Seed): Seed {
  return { isNullObject: false, address: "", rowIndex: 0, columnIndex: 0, ...seed };
}

/** A list of named objects with `getItem`, `getItemOrNullObject` and, once loaded, `items`. */
export function named(objects: Readonly<Record<string, Seed>>): Seed {
  const names = Object.keys(objects);
  return {
    ...objects,
    nothing: NOTHING,
    getItemOrNullObject(this: Mock, name: string) {
      return this[name] ?? this.nothing;
    },
    getItem(this: Mock, name: string) {
      if (this[name] === undefined) throw hostProblem("ItemNotFound");
      return this[name];
    },
    load(this: Mock, paths: string) {
      const own = paths.split(",").map((path) => path.replace(/^items\//, ""));
      this.items = names.map((name) => this[name].load(own));
    },
  };
}
