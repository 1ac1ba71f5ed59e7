import { USES } from "../../core/blade/bands";
import { QUENCH_MEDIA } from "../../core/hardening/quench-media";
import { GRINDS } from "../../core/shape/grinds";
import type { Worded } from "../../core/word-list";

/** Words shown at once; more are reached by typing on. */
const MAX_SHOWN = 200;

const folded = (word: string) => word.trim().toLowerCase();

/** Other names of words: those under which the trade knows them, and the groups that they belong to. */
type OtherNames = ReadonlyMap<string, readonly string[]>;

const worded: readonly Worded[] = [...USES, ...GRINDS, ...QUENCH_MEDIA];
const OTHER_NAMES: OtherNames = new Map(
  worded.map(({ word, aliases, group }) => [word, group === undefined ? aliases : [group, ...aliases]]),
);

/**
 * Words that begin with what was typed come first, then those that hold it anywhere, then those that go by another name
 * which begins so: "kitchen" finds the knives of a kitchen.
 */
export function matching(words: readonly string[], typed: string): readonly string[] {
  const wanted = folded(typed);
  if (wanted === "") return words;
  const tests = [
    (word: string) => folded(word).startsWith(wanted),
    (word: string) => folded(word).includes(wanted),
    (word: string) => (OTHER_NAMES.get(word) ?? []).some((name) => folded(name).startsWith(wanted)),
  ];
  return [...new Set(tests.flatMap((test) => words.filter(test)))];
}

/** The word that Enter takes for what was typed: one that begins with it. Nothing typed takes nothing. */
export function firstMatch(words: readonly string[], typed: string): string | undefined {
  const wanted = folded(typed);
  if (wanted === "") return undefined;
  return (
    words.find((word) => word === typed) ??
    words.find((word) => folded(word) === wanted) ??
    words.find((word) => folded(word).startsWith(wanted))
  );
}

/** A list of words to choose from. It never takes the focus. */
export class WordList {
  readonly element = document.createElement("ul");
  private shown: readonly string[] = [];
  /** The word that stands out. */
  match: string | undefined;

  /** @param chosen - Called with a word that was pressed with the pointer. */
  constructor(
    private readonly words: readonly string[],
    private readonly chosen: (word: string) => void,
  ) {
    this.element.className = "word-list";
    this.element.setAttribute("role", "listbox");
    this.element.setAttribute("aria-label", "Words offered for this cell");
    this.element.addEventListener("pointerdown", (event) => event.preventDefault());
    this.element.addEventListener("mousedown", (event) => event.preventDefault());
  }

  /** Shows the words that fit what stands in the cell. */
  filter(typed: string): void {
    this.shown = matching(this.words, typed).slice(0, MAX_SHOWN);
    this.match = firstMatch(this.shown, typed);
    this.element.replaceChildren(...this.shown.map((word) => this.option(word)));
    this.element.hidden = this.shown.length === 0;
    this.mark();
  }

  /**
   * Lets the next word down or up stand out.
   *
   * @returns False where the list is empty.
   */
  move(by: 1 | -1): boolean {
    const { length } = this.shown;
    if (length === 0) return false;
    const at = this.match === undefined ? -1 : this.shown.indexOf(this.match);
    const next = at < 0 ? (by === 1 ? 0 : length - 1) : (at + by + length) % length;
    this.match = this.shown[next];
    this.mark();
    return true;
  }

  private option(word: string): HTMLLIElement {
    const item = document.createElement("li");
    item.setAttribute("role", "option");
    item.textContent = word;
    item.addEventListener("click", () => this.chosen(word));
    return item;
  }

  private mark(): void {
    for (const item of this.element.children) {
      const isMatch = item.textContent === this.match;
      item.setAttribute("aria-selected", String(isMatch));
      if (isMatch) item.scrollIntoView({ block: "nearest" });
    }
  }
}
