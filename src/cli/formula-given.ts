import { typedForm } from "../formula/stored-form";
import { tokensOf } from "../formula/tokens";
import { WrongArguments } from "./options";

/** A formula as the engine takes it: names as files write them and the `@` of single values are read too. */
export function asTyped(formula: string): string {
  const tokens = tokensOf(typedForm(formula));
  return tokens
    .filter(({ text }, at) => text !== "@" || tokens[at + 1]?.kind !== "call")
    .map(({ text }) => text)
    .join("");
}

/** Refuses arguments parted by semicolons, as some languages of a spreadsheet program have them. */
export function refuseSemicolons(formula: string): void {
  let arrays = 0;
  for (const { kind } of tokensOf(formula)) {
    if (kind === "openArray") arrays += 1;
    if (kind === "closeArray") arrays -= 1;
    if (kind === "semicolon" && arrays === 0)
      throw new WrongArguments("a semicolon parts the arguments: write a comma, and a point in numbers");
  }
}
