import type { Token, TokenKind } from "./pieces";
import { textOf, tokensOf } from "./tokens";

/** A part of a formula; `text` is how it stands there. */
export type Expression = { readonly text: string } & (
  | { readonly kind: "constant"; readonly value: number | string | boolean }
  | { readonly kind: "error" | "nothing" | "reference" }
  | { readonly kind: "array"; readonly rows: readonly (readonly Expression[])[] }
  | { readonly kind: "call"; readonly name: string; readonly given: readonly Expression[] }
  | { readonly kind: "operation"; readonly operator: string; readonly given: readonly Expression[] }
);

/** How strongly an operator between two parts binds; a sign in front and `%` behind bind strongest of all. */
const BINDING: Readonly<Partial<Record<string, number>>> = {
  "=": 1,
  "<>": 1,
  "<": 1,
  ">": 1,
  "<=": 1,
  ">=": 1,
  "&": 2,
  "+": 3,
  "-": 3,
  "*": 4,
  "/": 4,
  "^": 5,
};
const SIGN = 6;

const REFERENCES: readonly TokenKind[] = ["sheet", "cell", "columns", "rows", "name", "brackets"];

class Unreadable extends Error {}

class Parser {
  private next = 0;

  constructor(
    private readonly formula: string,
    private readonly tokens: readonly Token[],
  ) {}

  whole(): Expression {
    const found = this.expression(0);
    if (this.next < this.tokens.length) throw new Unreadable();
    return found;
  }

  private peek(kind: TokenKind): Token | undefined {
    const token = this.tokens[this.next];
    return token?.kind === kind ? token : undefined;
  }

  private take(kind: TokenKind): Token {
    const token = this.peek(kind);
    if (token === undefined) throw new Unreadable();
    this.next += 1;
    return token;
  }

  private skip(kind: TokenKind): boolean {
    if (this.peek(kind) === undefined) return false;
    this.next += 1;
    return true;
  }

  /** The formula from a place to the end of the last piece taken. */
  private since(at: number): string {
    const last = this.tokens[this.next - 1];
    return last === undefined ? "" : this.formula.slice(at, last.at + last.text.length);
  }

  private get place(): number {
    return this.tokens[this.next]?.at ?? this.formula.length;
  }

  private expression(binding: number): Expression {
    const at = this.place;
    let left = this.percents(this.operand(), at);
    for (;;) {
      const operator = this.peek("operator");
      const strength = BINDING[operator?.text ?? ""];
      if (operator === undefined || strength === undefined || strength <= binding) return left;
      this.next += 1;
      const given = [left, this.expression(strength)];
      left = { kind: "operation", operator: operator.text, given, text: this.since(at) };
    }
  }

  private percents(operand: Expression, at: number): Expression {
    let found = operand;
    while (this.peek("operator")?.text === "%") {
      this.next += 1;
      found = { kind: "operation", operator: "%", given: [found], text: this.since(at) };
    }
    return found;
  }

  private operand(): Expression {
    const at = this.place;
    if (this.isNext("operator")) return this.signed(at);
    let found = this.reached(at);
    while (this.startsBehindSpace(found)) {
      found = {
        kind: "operation",
        operator: " ",
        given: [found, this.reached(this.place)],
        text: this.since(at),
      };
    }
    return found;
  }

  private isNext(...kinds: readonly TokenKind[]): boolean {
    const kind = this.tokens[this.next]?.kind;
    return kind !== undefined && kinds.includes(kind);
  }

  /** A space between two references means the cells they share. */
  private startsBehindSpace(left: Expression): boolean {
    const isReference = left.kind === "reference" || left.kind === "call" || left.kind === "operation";
    const isApart = /\s/.test(this.formula[this.place - 1] ?? "");
    return isReference && isApart && this.isNext(...REFERENCES, "call", "open");
  }

  /** A part with all that a colon or a hash mark behind it adds. */
  private reached(at: number): Expression {
    let found = this.primary(at);
    for (let mark = this.peek("operator")?.text; mark === ":" || mark === "#"; ) {
      this.next += 1;
      const given = mark === "#" ? [found] : [found, this.primary(this.place)];
      const text = this.since(at);
      const isPlain = given.every(({ kind }) => kind === "reference");
      found = isPlain ? { kind: "reference", text } : { kind: "operation", operator: mark, given, text };
      mark = this.peek("operator")?.text;
    }
    return found;
  }

  private primary(at: number): Expression {
    if (this.skip("sheet")) {
      if (this.isNext("call")) return this.call(at);
      if (this.isNext("error")) this.next += 1;
      else this.takePlace();
      return { kind: "reference", text: this.since(at) };
    }
    if (this.isNext("call")) return this.call(at);
    if (this.skip("openArray")) return this.array(at);
    if (this.skip("open")) return this.group(at);
    return this.leaf(at);
  }

  /** What stands in round brackets: one part, or several references taken together. */
  private group(at: number): Expression {
    const parts = [this.expression(0)];
    while (this.skip("comma")) parts.push(this.expression(0));
    this.take("close");
    const [only] = parts;
    const text = this.since(at);
    return parts.length === 1 && only !== undefined
      ? { ...only, text }
      : { kind: "operation", operator: ",", given: parts, text };
  }

  private signed(at: number): Expression {
    const { text: operator } = this.take("operator");
    if (!["+", "-", "@"].includes(operator)) throw new Unreadable();
    const operand = this.expression(SIGN);
    if (operator !== "-") return { ...operand, text: this.since(at) };
    return { kind: "operation", operator: "sign", given: [operand], text: this.since(at) };
  }

  /** The cells, the name or the columns of a table that a reference names. */
  private takePlace(): void {
    if (!this.isNext("cell", "columns", "rows", "name", "brackets")) throw new Unreadable();
    const isName = this.isNext("name");
    this.next += 1;
    if (isName && this.isNext("brackets")) this.next += 1;
  }

  private leaf(at: number): Expression {
    const token = this.tokens[this.next];
    const text = token?.text ?? "";
    switch (token?.kind) {
      case "number":
        this.next += 1;
        return { kind: "constant", value: Number(text), text };
      case "text":
        this.next += 1;
        return { kind: "constant", value: textOf(text), text };
      case "error":
        this.next += 1;
        return { kind: "error", text };
      default:
        this.takePlace();
        if (/^(true|false)$/i.test(text)) return { kind: "constant", value: /^t/i.test(text), text };
        return { kind: "reference", text: this.since(at) };
    }
  }

  private call(at: number): Expression {
    const name = this.take("call").text.toUpperCase();
    this.take("open");
    const given: Expression[] = [];
    if (this.skip("close")) return { kind: "call", name, given, text: this.since(at) };
    do given.push(this.argument());
    while (this.skip("comma"));
    this.take("close");
    return { kind: "call", name, given, text: this.since(at) };
  }

  private argument(): Expression {
    const isLeftOut = this.peek("comma") !== undefined || this.peek("close") !== undefined;
    return isLeftOut ? { kind: "nothing", text: "" } : this.expression(0);
  }

  private array(at: number): Expression {
    const rows: Expression[][] = [];
    do {
      const row: Expression[] = [];
      do row.push(this.expression(SIGN - 1));
      while (this.skip("comma"));
      rows.push(row);
    } while (this.skip("semicolon"));
    this.take("closeArray");
    return { kind: "array", rows, text: this.since(at) };
  }
}

/**
 * Reads a formula.
 *
 * @param formula - With its equals sign, in English as Excel stores it.
 * @returns `null` where it is none that can be read here.
 */
export function parseFormula(formula: string): Expression | null {
  const [equals, ...tokens] = tokensOf(formula).filter(({ kind }) => kind !== "space");
  if (equals?.text !== "=" || equals.at > 0 || tokens.length === 0) return null;
  try {
    return new Parser(formula, tokens).whole();
  } catch (problem) {
    if (problem instanceof Unreadable) return null;
    throw problem;
  }
}

/** The parts that stand directly in a part. */
export function partsOf(expression: Expression): readonly Expression[] {
  if (expression.kind === "array") return expression.rows.flat();
  return expression.kind === "call" || expression.kind === "operation" ? expression.given : [];
}
