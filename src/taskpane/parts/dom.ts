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

/** Runs a task once typing has paused. */
export function afterPause(task: () => void, milliseconds = 150): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  return () => {
    clearTimeout(timer);
    timer = setTimeout(task, milliseconds);
  };
}
