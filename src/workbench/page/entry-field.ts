import { byId } from "./page";
import { movesFocus } from "./user-acts";

export interface EntryField {
  text(): string;
  /** Shows a text, unless something is being typed: a result that arrives meanwhile must not wipe it out. */
  show(text: string): void;
  /** Shows a text as if it were being typed, and waits for Enter or Escape. */
  resume(text: string): void;
}

/**
 * A field of the page that shows what the sheet says and can be typed in. Enter takes what was typed;
 * Escape, or leaving the field, drops it. Where the grid takes the focus unasked, the field takes it back.
 *
 * @param entered - Called on Enter.
 * @param dropped - Called where the typed text no longer counts and the field has to be shown anew.
 * @param typed - Told of every change of a text that is not yet entered; `null` once it is entered or dropped.
 */
export function entryField(
  id: string,
  entered: () => void,
  dropped: () => void,
  typed: (text: string | null) => void = () => undefined,
): EntryField {
  const field = byId(id, HTMLInputElement);
  let typing = false;

  const stop = (then: () => void) => {
    const wasTyping = typing;
    typing = false;
    then();
    if (wasTyping) typed(null);
  };
  field.addEventListener("input", () => {
    typing = true;
    typed(field.value);
  });
  field.addEventListener("blur", () => {
    // The window may lose the focus while the field keeps it: then nobody left it.
    if (!typing || document.activeElement === field) return;
    if (movesFocus()) stop(dropped);
    else field.focus();
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
    resume(text) {
      field.value = text;
      typing = true;
      field.focus();
    },
  };
}
