import { type Command, main } from "../../src/cli/run-command";

/** What a command leaves behind. */
export interface Outcome {
  readonly status: number;
  readonly stdout: string;
  readonly stderr: string;
}

/** Runs a command here; that each starts as a process of its own is tested once a command. */
export async function outcome(command: Command, args: readonly string[], input = ""): Promise<Outcome> {
  let [stdout, stderr] = ["", ""];
  const status = await main(command, args, {
    input: async () => input,
    write: (words) => {
      stdout += words;
    },
    complain: (words) => {
      stderr += words;
    },
  });
  return { status, stdout, stderr };
}
