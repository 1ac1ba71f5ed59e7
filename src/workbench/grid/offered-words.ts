import { Direction, type IDisposable, type Injector } from "@univerjs/core";
import type { FUniver } from "@univerjs/core/facade";
import { ComponentManager, ISheetCellDropdownManagerService, KeyCode } from "@univerjs/preset-sheets-core";
import { createElement } from "react";
import { WordList } from "./word-list";

type Shown = Parameters<ISheetCellDropdownManagerService["showDropdown"]>[0];
type ListShown = Extract<Shown, { type: "list" }>;

/** Under this name the grid looks for the component that shows a list. */
const LIST_COMPONENT = "sheets.dropdown.list";

const MOVES = {
  Enter: { direction: Direction.DOWN, keycode: KeyCode.ENTER },
  Tab: { direction: Direction.RIGHT, keycode: KeyCode.TAB },
} as const;

/** The list of words under a cell, driven by the keys that go to the cell. */
class OfferedWords {
  private open:
    | { readonly list: WordList; readonly shown: ListShown; readonly popup: IDisposable }
    | undefined;
  private typed: string | undefined;

  constructor(private readonly api: FUniver) {
    api.addEvent(api.Event.SheetEditChanging, ({ value }) => {
      this.typed = value.toPlainText().replace(/\r?\n$/, "");
      this.open?.list.filter(this.typed);
    });
    api.addEvent(api.Event.SheetEditEnded, () => {
      this.typed = undefined;
    });
    api.addEvent(api.Event.SelectionChanged, () => this.close());
    // Before the grid's own shortcuts, which listen at the window too.
    window.addEventListener("keydown", (event) => this.press(event), true);
  }

  /** Takes over from the grid's own list, whose search field takes the focus out of the cell. */
  show(shown: ListShown, draw: (shown: ListShown) => IDisposable): IDisposable {
    this.close();
    const words = shown.props.options.map(({ label }) => String(label));
    const list = new WordList(words, (word) => this.take(word, undefined));
    list.filter(this.typed ?? "");
    const popup = draw({
      ...shown,
      onHide: () => {
        this.open = undefined;
        shown.onHide?.();
      },
    });
    this.open = { list, shown, popup };
    return popup;
  }

  /** Puts the list where the grid placed its popup. */
  mount(place: HTMLElement | null): void {
    if (place !== null && this.open !== undefined) place.replaceChildren(this.open.list.element);
  }

  private close(): void {
    this.open?.popup.dispose();
    this.open = undefined;
  }

  private press(event: KeyboardEvent): void {
    const { isComposing, altKey, ctrlKey, metaKey } = event;
    if (this.open === undefined || isComposing || altKey || ctrlKey || metaKey || !this.acts(event)) return;
    event.preventDefault();
    event.stopImmediatePropagation();
  }

  /** @returns False for a key that the list leaves to the grid. */
  private acts({ key, shiftKey }: KeyboardEvent): boolean {
    if (key === "ArrowDown") return this.open?.list.move(1) ?? false;
    if (key === "ArrowUp") return this.open?.list.move(-1) ?? false;
    if (key === "Escape") {
      this.close();
      return true;
    }
    return (key === "Enter" || key === "Tab") && !shiftKey && this.enters(key);
  }

  private enters(key: keyof typeof MOVES): boolean {
    const word = this.open?.list.match;
    // What stands in the cell already is entered by the grid, as everywhere else.
    if (word === undefined || word === this.typed) return false;
    this.take(word, key);
    return true;
  }

  private take(word: string, key: keyof typeof MOVES | undefined): void {
    const { shown } = this.open ?? {};
    if (shown === undefined) return;
    void Promise.resolve(shown.props.onChange?.([word])).then(() => {
      this.close();
      if (key !== undefined)
        void this.api.executeCommand("sheet.command.move-selection-enter-tab", MOVES[key]);
    });
  }
}

/**
 * Offers the words of a list without ever taking the focus: the list follows what is typed in the cell, arrows
 * move in it, Enter or Tab takes the word that stands out, Escape closes it.
 */
export function offerWords(api: FUniver, injector: Injector): void {
  const offered = new OfferedWords(api);
  const service = injector.get(ISheetCellDropdownManagerService);
  const draw = service.showDropdown.bind(service);
  service.showDropdown = (shown) =>
    shown.type === "list" && shown.props.multiple !== true ? offered.show(shown, draw) : draw(shown);
  const component = () => createElement("div", { ref: (place: HTMLElement | null) => offered.mount(place) });
  const components = injector.get(ComponentManager);
  components.delete(LIST_COMPONENT);
  components.register(LIST_COMPONENT, component as never);
}
