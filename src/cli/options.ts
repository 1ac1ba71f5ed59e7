import { parseArgs } from "node:util";
import { sentenceOf } from "../core/refusal";

/** Arguments of a command line, taken apart. */
export interface Options {
  readonly files: readonly string[];
  readonly flags: ReadonlySet<string>;
  readonly values: Readonly<Record<string, string>>;
}

/** A command line that cannot be understood, with the reason. */
export class WrongArguments extends Error {
  override readonly name = "WrongArguments";
}

/** The one short form: what other commands of a shell call `-o`. */
const short = (name: string) => (name === "output" ? { short: "o" } : {});
const option = (type: "boolean" | "string") => (name: string) => [name, { type, ...short(name) }] as const;

/**
 * Takes arguments apart: `--flag`, `--name value` or `--name=value`, and files. `-o` is
 * `--output`; `--` ends the options.
 *
 * @throws WrongArguments for an option that is not listed, or one without its value.
 */
export function readOptions(
  args: readonly string[],
  known: { readonly flags: readonly string[]; readonly values: readonly string[] },
): Options {
  const options = Object.fromEntries([
    ...known.flags.map(option("boolean")),
    ...known.values.map(option("string")),
  ]);
  try {
    const { values, positionals } = parseArgs({ args: [...args], options, allowPositionals: true });
    const given = Object.entries(values);
    return {
      files: positionals,
      flags: new Set(given.filter(([, value]) => value === true).map(([name]) => name)),
      values: Object.fromEntries(
        given.flatMap(([name, value]) => (typeof value === "string" ? [[name, value]] : [])),
      ),
    };
  } catch (problem) {
    throw new WrongArguments(sentenceOf(problem));
  }
}
