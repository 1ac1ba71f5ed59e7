import type { HostPort } from "../host/port";
import { fetchAhead } from "./fetch-ahead";
import type { PageContext, PageId, PaneState } from "./page";
import { isPageId, PAGES } from "./page-list";
import type { PaneFiles } from "./pane-files";
import { element, fill } from "./parts/dom";
import { entriesOf } from "./parts/entries";
import { followLine } from "./parts/follow-line";
import { addJumpList } from "./parts/jump-list";
import { openWhilePrinting, printedLine } from "./parts/print";
import { hasStarted } from "./parts/started";
import { unitChoice } from "./parts/unit-choice";
import "./pane.css";

export interface PaneOptions {
  /** Where to begin: a page, or `functions/NAME` for the help of one function. */
  readonly start?: string;
  /** Shown above every page: what does not work here, and why. */
  readonly notice?: string;
  /** Makes whole workbooks, where the pane is to offer it. */
  readonly files?: PaneFiles;
}

export interface MountedPane {
  /** Shows another page, as a press on its name would. */
  readonly open: (page: PageId, part?: string) => void;
  /** The page that is open. */
  readonly shown: () => PageId;
  readonly unmount: () => void;
}

/** Which steel the pages show until one is chosen. */
const USUAL_STEEL = "1095";

/**
 * Puts the task pane into an element.
 *
 * @param root - An element of its own; whatever it holds is replaced.
 * @param port - The program around the pane.
 */
export function mountPane(root: HTMLElement, port: HostPort, options: PaneOptions = {}): MountedPane {
  const page = element("div", { class: "page" });
  const state: PaneState = { steel: USUAL_STEEL, part: "" };
  let shown = startingPage(options.start, state);
  const followed = followLine(port, page, (line) => {
    state.steel = line === null ? USUAL_STEEL : (line.facts.steel ?? state.steel);
    // Figures of a steel of the run before must not stand beside a new one.
    if (line === null) void show(shown);
  });
  const { show, leave } = pageShower(page, {
    context: { port, state, files: options.files, open: (id, part) => open(id, part) },
    drawn: () => {
      followed.enterInto(page);
      addJumpList(page);
    },
  });
  const navigation = pageButtons((id) => open(id));
  const open = (id: PageId, part = "") => {
    shown = id;
    state.part = part;
    navigation.mark(id);
    // Whoever hears the page, or goes on by keyboard, is where the new page begins.
    void show(id).then(() => page.querySelector("h2")?.focus());
  };
  const drawAnew = async () => {
    const enterAgain = entriesOf(page);
    await show(shown);
    enterAgain();
  };
  root.classList.add("pane");
  const theme = port.theme();
  if (theme !== undefined) root.dataset.theme = theme;
  const units = unitChoice(() => void drawAnew());
  fill(root, header(navigation.block, followed.block), notice(options.notice), page, printedLine(), units);
  navigation.mark(shown);
  void show(shown).then(fetchAhead);
  const leavePrinting = openWhilePrinting(page);
  const unmount = () => {
    leave();
    followed.leave();
    leavePrinting();
    root.replaceChildren();
  };
  return { open, shown: () => shown, unmount };
}

function startingPage(start: string | undefined, state: PaneState): PageId {
  const [page = "", part = ""] = (start ?? "").split("/");
  state.part = part;
  if (isPageId(page)) return page;
  return hasStarted() ? "steels" : "start";
}

function header(...parts: readonly HTMLElement[]): HTMLElement {
  return element("div", { class: "head" }, element("h1", {}, "Blade Metallurgy"), ...parts);
}

function notice(text: string | undefined): HTMLElement | null {
  return text === undefined ? null : element("p", { class: "notice", role: "status" }, text);
}

function pageButtons(chosen: (id: PageId) => void) {
  const buttons = new Map<PageId, HTMLButtonElement>();
  for (const [id, { title }] of Object.entries(PAGES)) {
    if (!isPageId(id)) continue;
    const made = element("button", { type: "button" }, title);
    made.addEventListener("click", () => chosen(id));
    buttons.set(id, made);
  }
  const items = [...buttons.values()].map((made) => element("li", {}, made));
  // A row that scrolls would be a stop of its own for Tab; its buttons are.
  const list = element("ul", { tabindex: "-1" }, ...items);
  const all = element("button", { type: "button", class: "all", "aria-expanded": "false" }, "All pages");
  const unfold = (isOpen: boolean) => {
    list.classList.toggle("open", isOpen);
    all.setAttribute("aria-expanded", String(isOpen));
  };
  all.addEventListener("click", () => unfold(!list.classList.contains("open")));
  return {
    block: element("nav", { "aria-label": "Pages of the pane" }, list, all),
    mark(current: PageId) {
      for (const [id, made] of buttons) {
        if (id === current) made.setAttribute("aria-current", "page");
        else made.removeAttribute("aria-current");
      }
      unfold(false);
      // Not `scrollIntoView`: it also moves the place from which Tab goes on.
      const shown = buttons.get(current);
      if (shown !== undefined) list.scrollLeft = shown.offsetLeft - list.offsetLeft - shown.offsetWidth;
    },
  };
}

interface Shower {
  readonly context: PageContext;
  /** Called when a page stands. */
  readonly drawn: () => void;
}

/** Shows one page after another; a page that arrives late does not push out one chosen since. */
function pageShower(page: HTMLElement, { context, drawn }: Shower) {
  let leaveShown: (() => void) | undefined;
  let wanted: PageId | undefined;
  const leave = () => {
    leaveShown?.();
    leaveShown = undefined;
  };
  const show = async (id: PageId): Promise<void> => {
    wanted = id;
    const { title, load } = PAGES[id];
    try {
      const { render } = await load();
      if (wanted !== id) return;
      leave();
      fill(page, element("h2", { tabindex: "-1" }, title));
      leaveShown = render(page, context);
      drawn();
    } catch (problem) {
      if (wanted === id) fill(page, element("h2", {}, title), failure(problem));
    }
  };
  return { show, leave };
}

function failure(problem: unknown): HTMLElement {
  console.error(problem);
  const sentence = "This page could not be shown. Check the connection and choose it again.";
  return element("p", { role: "alert", class: "refusal" }, sentence);
}
