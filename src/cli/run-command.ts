import { FileRefusal } from "../workbook/file/package/file-refusal";
import { WrongArguments } from "./options";

/** Exit status: done, an answer that asks for attention, wrong arguments or a refused file, a fault of ours. */
export const STATUS = { done: 0, attention: 1, refused: 2, fault: 70 } as const;

function complain(name: string, usage: string, thrown: unknown): number {
  if (thrown instanceof WrongArguments || thrown instanceof FileRefusal) {
    process.stderr.write(`${name}: ${thrown.message}\n${thrown instanceof WrongArguments ? usage : ""}`);
    return STATUS.refused;
  }
  process.stderr.write(`${name}: ${thrown instanceof Error ? thrown.stack : String(thrown)}\n`);
  return STATUS.fault;
}

/**
 * Runs a command to its end and sets the exit status of the process.
 *
 * @param usage - Printed for `--help` and after a complaint about the arguments.
 * @param command - Gets the arguments and answers with the exit status.
 */
export async function runCommand(
  name: string,
  usage: string,
  command: (args: readonly string[]) => Promise<number>,
): Promise<void> {
  const args = process.argv.slice(2);
  if (args.includes("--help") || args.includes("-h")) {
    process.stdout.write(usage);
    return;
  }
  try {
    process.exitCode = await command(args);
  } catch (thrown) {
    process.exitCode = complain(name, usage, thrown);
  }
}

const PATIENCE_MS = 1500;

/** Says on standard error what is being done, once the work has taken longer than a reader waits in silence. */
export function progressLine(name: string): (words: string) => void {
  const start = performance.now();
  return (words) => {
    if (performance.now() - start > PATIENCE_MS) process.stderr.write(`${name}: ${words} …\n`);
  };
}
