type Child = Node | string | null | readonly Child[];

type Attributes = Readonly<Record<string, string>>;

/** An element with attributes and children; `null` children are left out. Text is never read as markup. */
export function element<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  attributes: Attributes = {},
  ...children: Child[]
): HTMLElementTagNameMap[K] {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) made.setAttribute(name, value);
  append(made, children);
  return made;
}

function append(parent: Element, children: readonly Child[]): void {
  for (const child of children) {
    if (child === null) continue;
    if (typeof child === "string" || child instanceof Node) parent.append(child);
    else append(parent, child);
  }
}

/** Replaces everything an element holds. */
export function fill(parent: Element, ...children: Child[]): void {
  parent.replaceChildren();
  append(parent, children);
}

/** Says that the page itself entered a value: nobody is typing who might go on. */
export class Entered extends Event {}

/** Runs a task once typing has paused; where the page itself entered values, at once and once for all of them. */
export function afterPause(task: () => void, milliseconds = 150): (event?: Event) => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let isAhead = false;
  const run = () => {
    isAhead = false;
    task();
  };
  return (event) => {
    clearTimeout(timer);
    if (!(event instanceof Entered)) timer = setTimeout(task, milliseconds);
    else if (!isAhead) {
      isAhead = true;
      queueMicrotask(run);
    }
  };
}
