import { BoundedMap } from "./bounded-map";

/** Answers about a thing that is asked about again and again, such as a steel in every line of a run. */
export class RememberedAnswers<Thing extends object, Answer> {
  private readonly byThing = new WeakMap<Thing, BoundedMap<string, Answer>>();

  /** @param limit - Answers that are remembered about one thing. */
  constructor(private readonly limit: number) {}

  /**
   * @param key - All that the answer depends on besides the thing itself.
   * @param work - Works out an answer that is not known.
   */
  answer(thing: Thing, key: string, work: () => Answer): Answer {
    const answers = this.byThing.get(thing) ?? new BoundedMap<string, Answer>(this.limit);
    this.byThing.set(thing, answers);
    const known = answers.get(key);
    if (known !== undefined) return known;
    const made = work();
    answers.set(key, made);
    return made;
  }
}
