import { byId } from "./page";

export interface EntryField {
  text(): string;
  /** Shows a text, unless something is being typed: a result that arrives meanwhile must not wipe it out. */
  show(text: string): void;
}

/**
 * A field of the page that shows what the sheet says and can be typed in. Enter takes what was typed;
 * Escape, or leaving the field, drops it.
 *
 * @param entered - Called on Enter.
 * @param dropped - Called where the typed text no longer counts and the field has to be shown anew.
 */
export function entryField(id: string, entered: () => void, dropped: () => void): EntryField {
  const field = byId(id, HTMLInputElement);
  let typing = false;

  const stop = (then: () => void) => {
    typing = false;
    then();
  };
  field.addEventListener("input", () => {
    typing = true;
  });
  field.addEventListener("blur", () => {
    if (typing) stop(dropped);
  });
  field.addEventListener("keydown", ({ key }) => {
    if (key === "Enter") stop(entered);
    if (key === "Escape") stop(dropped);
  });
  field.disabled = false;

  return {
    text: () => field.value,
    show(text) {
      if (!typing) field.value = text;
    },
  };
}
