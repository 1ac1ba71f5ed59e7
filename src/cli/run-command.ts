import { text } from "node:stream/consumers";
import { FileRefusal } from "../workbook/file/package/file-refusal";
import { isSystemError, reasonOf } from "./files";
import { WrongArguments } from "./options";

/** Exit status: done, an answer that asks for attention, wrong arguments or a refused file, a fault of ours. */
export const STATUS = { done: 0, attention: 1, refused: 2, fault: 70 } as const;

/** What a command reads from and writes to. */
export interface Terminal {
  /** All of standard input. */
  input(): Promise<string>;
  write(words: string): void;
  complain(words: string): void;
}

export interface Command {
  readonly name: string;
  /** Printed for `--help` and after a complaint about the arguments. */
  readonly usage: string;
  /** Gets the arguments and answers with the exit status. */
  run(args: readonly string[], terminal: Terminal): Promise<number>;
}

function complaint({ name, usage }: Command, thrown: unknown): readonly [words: string, status: number] {
  if (thrown instanceof WrongArguments) return [`${name}: ${thrown.message}\n${usage}`, STATUS.refused];
  if (thrown instanceof FileRefusal || (thrown instanceof Error && thrown.name === "BudgetEnd"))
    return [`${name}: ${thrown.message}\n`, STATUS.refused];
  if (isSystemError(thrown))
    return [`${name}: ${thrown.path ?? "a file"}: ${reasonOf(thrown)}\n`, STATUS.refused];
  return [`${name}: ${thrown instanceof Error ? thrown.stack : String(thrown)}\n`, STATUS.fault];
}

/** A command from its arguments to its exit status. */
export async function main(command: Command, args: readonly string[], terminal: Terminal): Promise<number> {
  if (args.includes("--help") || args.includes("-h")) {
    terminal.write(command.usage);
    return STATUS.done;
  }
  try {
    return await command.run(args, terminal);
  } catch (thrown) {
    const [words, status] = complaint(command, thrown);
    terminal.complain(words);
    return status;
  }
}

const PROCESS: Terminal = {
  input: () => text(process.stdin),
  write: (words) => process.stdout.write(words),
  complain: (words) => process.stderr.write(words),
};

/** Whoever reads what a command says may leave early, as `head` does: the work is done to its end all the same. */
export function letReaderLeave(stream: NodeJS.EventEmitter): void {
  stream.on("error", (problem: NodeJS.ErrnoException) => {
    if (problem.code !== "EPIPE") throw problem;
  });
}

/** Runs a command as this process. */
export async function runCommand(command: Command): Promise<void> {
  for (const stream of [process.stdout, process.stderr]) letReaderLeave(stream);
  process.exitCode = await main(command, process.argv.slice(2), PROCESS);
}

const PATIENCE_MS = 1500;

/** Says on standard error what is being done, once the work has taken longer than a reader waits in silence. */
export function progressLine(name: string, terminal: Terminal): (words: string) => void {
  const start = performance.now();
  return (words) => {
    if (performance.now() - start > PATIENCE_MS) terminal.complain(`${name}: ${words} …\n`);
  };
}
