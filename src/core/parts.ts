import { Refusal } from "./refusal";

/**
 * A calculation that may pause: it yields at places where nothing is lost by waiting, and returns its result at the end.
 * Whoever runs it decides how long to go on.
 */
export type InParts<T> = Generator<undefined, T>;

/** Runs a calculation to its end without a pause. */
export function toTheEnd<T>(parts: InParts<T>): T {
  for (;;) {
    const { done, value } = parts.next();
    if (done) return value;
  }
}

/** What a calculation in parts comes to: its value, or the refusal in its place. */
export function* attemptInParts<T>(parts: InParts<T>): InParts<T | Refusal> {
  try {
    return yield* parts;
  } catch (thrown) {
    if (thrown instanceof Refusal) return thrown;
    throw thrown;
  }
}
