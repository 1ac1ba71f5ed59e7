import { element, fill } from "../parts/dom";
import "./drawings.css";
import { type Shape, SVG } from "./svg";

/** The elements of a drawing in the page. */
function elementOf({ tag, attributes, children }: Shape): SVGElement {
  const made = document.createElementNS(SVG, tag);
  for (const [name, value] of Object.entries(attributes)) made.setAttribute(name, String(value));
  made.append(...children.map((child) => (typeof child === "string" ? child : elementOf(child))));
  return made;
}

/** CSS pixels: a picture is neither squeezed below nor blown up above. */
const NARROWEST = 150;
const WIDEST = 520;

/**
 * A picture drawn anew for every width of its place, so that its words keep their size in a narrow
 * pane, a wide one and under zoom.
 *
 * @param draw - Makes the picture for a width in CSS pixels.
 * @param caption - How to read it.
 */
export function figure(draw: (width: number) => Shape, caption: string): HTMLElement {
  const place = element("div", { class: "drawing" });
  let drawn = 0;
  new ResizeObserver(() => {
    const width = Math.min(WIDEST, Math.max(NARROWEST, Math.floor(place.clientWidth)));
    if (width === drawn) return;
    drawn = width;
    fill(place, elementOf(draw(width)));
  }).observe(place);
  return element("figure", {}, place, element("figcaption", { class: "basis" }, caption));
}
