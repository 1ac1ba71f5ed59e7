import { readFileSync } from "node:fs";
import { join } from "node:path";
import vm from "node:vm";

const RUNTIME = "node_modules/@microsoft/office-js/dist/custom-functions-runtime.js";

/** Bits of an invocation's flags: the function may be called off, takes error values, and rich values. */
export const CANCELABLE = 1;
export const ERRORS_ALLOWED = 4;
export const RICH_ALLOWED = 8;

/** Excel's numbers for the errors a function may answer with. */
export const CODES: Readonly<Record<number, string>> = { 1: "#N/A", 7: "#VALUE!" };

/** Milliseconds that the dispatcher may be busy without a pause. */
const LONGEST = 10_000;

/** One call as it travels to the add-in. */
export interface Invocation {
  readonly id: string;
  readonly args: readonly unknown[];
  readonly flags?: number;
}

/** What travelled back: `value` is the sentence where the call failed. */
export interface Outcome {
  readonly ok: boolean;
  readonly value: unknown;
  readonly code?: number;
}

interface Bridge {
  onMessageFromHost?: (message: string) => void;
  sendMessageToHost: (message: string) => void;
}

/**
 * Just enough of a page for the vendor's runtime to load. The language's own objects must be those
 * of the context, so none is handed in.
 */
function globalsFor(bridge: Bridge, later: (task: () => void, milliseconds: number) => unknown) {
  const nothing = () => undefined;
  const script = {
    src: "https://localhost/custom-functions-runtime.js",
    appendChild: nothing,
    setAttribute: nothing,
  };
  const storage = { getItem: () => null, setItem: nothing, removeItem: nothing };
  return {
    _richApiNativeBridge: bridge,
    document: {
      getElementsByTagName: () => [script],
      currentScript: script,
      createElement: () => ({ ...script }),
    },
    navigator: { userAgent: "test" },
    history: {},
    location: { search: "", href: "https://localhost/", hash: "" },
    sessionStorage: storage,
    localStorage: storage,
    console: { log: nothing, warn: nothing, error: nothing },
    setTimeout: later,
    clearTimeout,
  };
}

interface Action {
  readonly Id: number;
  readonly Name: string;
  readonly ArgumentInfo?: { readonly Arguments?: readonly unknown[] };
}

/**
 * The vendor's runtime looks some seconds for a file of the vendor's that only a page has, and then throws. On a busy
 * machine calls are under way by then; they have nothing to do with it.
 */
function tolerant(task: (...given: unknown[]) => void, given: readonly unknown[]): void {
  try {
    task(...given);
  } catch (problem) {
    if (!String(problem).includes("MicrosoftAjax.js")) throw problem;
  }
}

/** Excel's side of the vendor's own dispatcher, in a context without document or storage. */
export class Dispatcher {
  private readonly context: vm.Context;
  private readonly bridge: Bridge;
  private readonly waiting = new Map<number, (outcome: Outcome) => void>();
  private last = 0;
  /** Messages with results that came back. */
  batches = 0;

  /** @param pages - Folder of the built pages. */
  constructor(pages: string) {
    this.bridge = { sendMessageToHost: (message) => this.receive(JSON.parse(message)) };
    const later = (task: (...given: unknown[]) => void, milliseconds: number, ...given: unknown[]) =>
      setTimeout(() => this.run(() => tolerant(task, given)), milliseconds);
    this.context = vm.createContext(globalsFor(this.bridge, later));
    vm.runInContext("globalThis.window = globalThis; globalThis.self = globalThis;", this.context);
    vm.runInContext(readFileSync(RUNTIME, "utf8"), this.context);
    vm.runInContext(
      "delete globalThis.document; delete globalThis.localStorage; delete globalThis.sessionStorage;",
      this.context,
    );
    vm.runInContext(readFileSync(join(pages, "functions.js"), "utf8"), this.context);
  }

  /** Ids that the bundle registered. */
  registered(): string[] {
    return vm.runInContext("Object.keys(CustomFunctions._association.mappings)", this.context);
  }

  /** Adds a function of the vendor's runtime to ours, from its text. */
  define(id: string, code: string): void {
    vm.runInContext(`CustomFunctions.associate(${JSON.stringify(id)}, ${code})`, this.context);
  }

  /** Sends all calls in one message and waits for every answer. */
  async call(invocations: readonly Invocation[]): Promise<Outcome[]> {
    const entries: unknown[] = [];
    const outcomes = invocations.map(({ id, args, flags = RICH_ALLOWED }) => {
      this.last += 1;
      const number = this.last;
      entries.push([1, 1000, "", JSON.stringify([number, id, args, "Plan!A1", flags]), 0]);
      return new Promise<Outcome>((done) => this.waiting.set(number, done));
    });
    const message = JSON.stringify({ type: 3, message: { entries } });
    this.run(() => this.bridge.onMessageFromHost?.(message));
    return Promise.all(outcomes);
  }

  /** Runs work of the context; a function that does not come to an end fails its call instead of the whole run. */
  private run(task: () => void): void {
    this.context.task = task;
    try {
      vm.runInContext("task()", this.context, { timeout: LONGEST });
    } catch (problem) {
      const value = problem instanceof Error ? problem.message : String(problem);
      for (const done of this.waiting.values()) done({ ok: false, value, code: -1 });
      this.waiting.clear();
    }
  }

  private receive(request: { id: number; message: { body: string | { Actions: readonly Action[] } } }): void {
    const { body } = request.message;
    const { Actions: actions }: { Actions: readonly Action[] } =
      typeof body === "string" ? JSON.parse(body) : body;
    for (const { Name, ArgumentInfo } of actions) {
      if (Name === "SetInvocationArrayResults") this.settle(ArgumentInfo?.Arguments?.[0]);
    }
    const results = actions.map(({ Id }) => ({ ActionId: Id, Value: null }));
    const message = { statusCode: 200, headers: {}, body: JSON.stringify({ Results: results }) };
    const reply = JSON.stringify({ id: request.id, type: 2, flags: 0, message });
    setTimeout(() => this.bridge.onMessageFromHost?.(reply), 0);
  }

  private settle(results: unknown): void {
    this.batches += 1;
    for (const [number, ok, value, code] of results as [number, boolean, unknown, number?][]) {
      this.waiting.get(number)?.({ ok, value, ...(code === undefined || ok ? {} : { code }) });
      this.waiting.delete(number);
    }
  }
}
