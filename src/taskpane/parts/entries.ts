import { Entered } from "./dom";

type Control = HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement;

function controlsOf(root: Element): Control[] {
  return [...root.querySelectorAll<Control>("input, select, textarea")];
}

/** The control's label and which of that name it is: pages draw the same form the same way. */
function keysOf(controls: readonly Control[]): string[] {
  const labels = controls.map((control) => control.labels?.[0]?.textContent ?? "");
  return labels.map(
    (label, at) => `${label}#${labels.slice(0, at).filter((other) => other === label).length}`,
  );
}

/**
 * Remembers what a form holds, so that a page can be drawn anew without losing what was typed.
 *
 * @returns A function that types it in again, where the values differ.
 */
export function entriesOf(root: Element): () => void {
  const before = controlsOf(root);
  const typed = new Map(keysOf(before).map((key, at) => [key, before[at]?.value ?? ""]));
  return () => {
    const now = controlsOf(root);
    for (const [at, key] of keysOf(now).entries()) enter(now[at], typed.get(key));
  };
}

/** Puts a value into a control as if it had been typed. */
export function enter(control: Control | undefined, value: string | undefined): void {
  // The value of a file field cannot be set, and reading one again is the smith's to ask.
  if (control === undefined || value === undefined || control.value === value || control.type === "file")
    return;
  control.value = value;
  control.dispatchEvent(new Entered("input", { bubbles: true }));
  control.dispatchEvent(new Event("change", { bubbles: true }));
}
