import type { Token } from "../../formula/pieces";

/** A reference or a constant of a formula. */
interface Leaf {
  readonly text: string;
  /** Its place among the references, or among the numbers, of the formula; nothing for what is alike in the form. */
  readonly slot: number | undefined;
}

/** What a formula is made of, apart from its references and numbers: formulas of one form share one tree. */
export interface Pieces {
  /** The formula with marks in place of references and numbers. */
  readonly form: string;
  readonly leaves: readonly Leaf[];
  readonly numbers: readonly string[];
  readonly references: number;
}

/** Kinds that name cells otherwise than by address, or that the engine reads in its own way. */
const OTHERS = new Set<Token["kind"]>(["name", "columns", "rows", "brackets", "unknown", "semicolon"]);

const isSwitch = ({ kind, text }: Token) => kind === "name" && /^(TRUE|FALSE)$/i.test(text);

/** Where a constant list that begins at a piece ends. */
function arrayEnd(tokens: readonly Token[], at: number): number {
  const end = tokens.findIndex(({ kind }, place) => place > at && kind === "closeArray");
  return end < 0 ? tokens.length - 1 : end;
}

const joined = (tokens: readonly Token[]) => tokens.map(({ text }) => text).join("");

/** Takes formulas apart: what each says, and what all of its form say. */
class Reader {
  form = "";
  readonly leaves: Leaf[] = [];
  readonly numbers: string[] = [];
  references = 0;

  constructor(private readonly tokens: readonly Token[]) {}

  /** @returns False for a formula that shares its tree with none. */
  read(): boolean {
    for (let at = 0; at < this.tokens.length; at += 1) {
      const token = this.tokens[at] as Token;
      if (OTHERS.has(token.kind) && !isSwitch(token)) return false;
      at = this.take(token, at);
    }
    return true;
  }

  /** @returns The last piece that was taken. */
  private take(token: Token, at: number): number {
    const { kind, text } = token;
    if (kind === "openArray") return this.takeArray(at);
    if (kind === "cell") return this.takeReference(at);
    if (kind === "number") {
      this.leaves.push({ text, slot: this.numbers.length });
      this.numbers.push(text);
      this.form += "#";
      return at;
    }
    if (kind === "text" || kind === "error") this.leaves.push({ text, slot: undefined });
    else if (kind === "name") this.leaves.push({ text: text.toUpperCase(), slot: undefined });
    this.form += text;
    return at;
  }

  private takeArray(at: number): number {
    const end = arrayEnd(this.tokens, at);
    const text = joined(this.tokens.slice(at, end + 1));
    this.leaves.push({ text, slot: undefined });
    this.form += text;
    return end;
  }

  private takeReference(at: number): number {
    const prefix = this.tokens[at - 1]?.kind === "sheet" ? (this.tokens[at - 1]?.text ?? "") : "";
    const isRange = this.tokens[at + 1]?.text === ":" && this.tokens[at + 2]?.kind === "cell";
    const end = isRange ? at + 2 : at;
    this.leaves.push({ text: prefix + joined(this.tokens.slice(at, end + 1)), slot: this.references });
    this.references += 1;
    this.form += "@";
    return end;
  }
}

/** @returns Nothing for a formula that shares its tree with none. */
export function piecesOf(tokens: readonly Token[]): Pieces | undefined {
  const reader = new Reader(tokens.filter(({ kind }) => kind !== "space"));
  return reader.read() ? reader : undefined;
}
