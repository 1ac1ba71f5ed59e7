/**
 * Whether the last thing done on the page can move the focus: a press of the pointer or of Tab. The grid
 * also takes the focus by itself, some time after a sheet was shown, and must not get it from somebody who types.
 */
let moving = false;

addEventListener("pointerdown", () => set(true), true);
addEventListener("keydown", ({ key }) => set(key === "Tab"), true);
addEventListener("input", () => set(false), true);

function set(now: boolean): void {
  moving = now;
}

export const movesFocus = (): boolean => moving;
