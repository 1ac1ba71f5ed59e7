/** Words shown at once; more are reached by typing on. */
const MAX_SHOWN = 200;

const folded = (word: string) => word.trim().toLowerCase();

/** Words that begin with what was typed come first, then those that hold it anywhere. */
export function matching(words: readonly string[], typed: string): readonly string[] {
  const wanted = folded(typed);
  if (wanted === "") return words;
  const begins = words.filter((word) => folded(word).startsWith(wanted));
  return [...begins, ...words.filter((word) => !begins.includes(word) && folded(word).includes(wanted))];
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
