import { element, fill } from "./dom";

/** A page with fewer parts is seen at a glance. */
const LEAST = 4;

function headings(page: HTMLElement): HTMLElement[] {
  return [...page.querySelectorAll<HTMLElement>("h3")].filter(
    (heading) => heading.checkVisibility?.() ?? true,
  );
}

function jump(to: HTMLElement): HTMLElement {
  const press = element("button", { type: "button", class: "button" }, to.textContent ?? "");
  press.addEventListener("click", () => {
    to.tabIndex = -1;
    to.focus();
    to.scrollIntoView();
  });
  return element("li", {}, press);
}

/** Puts a list of its parts below the heading of a long page; the parts are read when it is opened, since pages change. */
export function addJumpList(page: HTMLElement): void {
  if (headings(page).length < LEAST) return;
  const list = element("ul", { class: "matches" });
  const made = element("details", { class: "jump" }, element("summary", {}, "On this page"), list);
  made.addEventListener("toggle", () => {
    if (made.open) fill(list, ...headings(page).map(jump));
  });
  page.querySelector("h2")?.after(made);
}
