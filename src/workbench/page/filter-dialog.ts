import type { ColumnValues } from "../grid/grid-rows";
import { button } from "./page";

const BLANK = "(blank)";

function choice(value: string): { readonly control: HTMLInputElement; readonly block: HTMLElement } {
  const control = document.createElement("input");
  control.type = "checkbox";
  control.checked = true;
  const label = document.createElement("label");
  label.append(control, ` ${value === "" ? BLANK : value}`);
  const block = document.createElement("div");
  block.append(label);
  return { control, block };
}

/** Asks which values of a column are to be seen. @returns Those ticked; `undefined` where one thought better of it. */
export function askForValues({ heading, values }: ColumnValues): Promise<ReadonlySet<string> | undefined> {
  const dialog = document.createElement("dialog");
  dialog.className = "share-dialog";
  const choices = values.map((value) => ({ value, ...choice(value) }));
  const group = document.createElement("fieldset");
  const legend = document.createElement("legend");
  legend.textContent = `Rows to show, by ${heading}`;
  dialog.setAttribute("aria-label", legend.textContent);
  group.append(legend, ...choices.map(({ block }) => block));
  let chosen: ReadonlySet<string> | undefined;
  const tick = (isOn: boolean) => () => {
    for (const { control } of choices) control.checked = isOn;
  };
  const show = button("Show these", () => {
    chosen = new Set(choices.filter(({ control }) => control.checked).map(({ value }) => value));
    dialog.close();
  });
  dialog.append(
    group,
    button("All", tick(true)),
    button("None", tick(false)),
    show,
    button("Cancel", () => dialog.close()),
  );
  return new Promise((resolve) => {
    dialog.addEventListener("close", () => {
      dialog.remove();
      resolve(chosen);
    });
    document.body.append(dialog);
    dialog.showModal();
  });
}
