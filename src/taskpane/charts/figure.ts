import { element, fill } from "../parts/dom";
import "./drawings.css";
import { type Shape, SVG, shape } from "./svg";

/** The elements of a drawing in the page. */
export function elementOf({ tag, attributes, children }: Shape): SVGElement {
  const made = document.createElementNS(SVG, tag);
  for (const [name, value] of Object.entries(attributes)) made.setAttribute(name, String(value));
  made.append(...children.map((child) => (typeof child === "string" ? child : elementOf(child))));
  return made;
}

/** CSS pixels: a picture is neither squeezed below nor blown up above. */
const NARROWEST = 150;
const WIDEST = 520;

/** How a picture is read place by place. */
export interface Reader {
  readonly name: string;
  readonly count: number;
  readonly start: number;
  readonly place: (at: number) => string;
  readonly told: (at: number) => string;
  /** What marks a place in a picture of a width. */
  readonly marks: (width: number, at: number) => readonly Shape[];
  /** The place that lies nearest to a pixel of such a picture. */
  readonly nearest: (width: number, pixels: number) => number;
}

const HINT = "Point at the line, or move along it with the arrow keys, to read it.";

/** The parts that read a picture: its slider for keyboard and readers, its marks, and the sentence below it. */
function readingOf(drawing: HTMLElement, reader: Reader, width: () => number) {
  const slider = element("input", {
    type: "range",
    class: "reader",
    min: "0",
    max: String(reader.count - 1),
    step: "1",
    value: String(reader.start),
    "aria-label": `Read along: ${reader.name}`,
    "aria-valuetext": reader.place(reader.start),
  });
  const marked = element("div", { class: "marked" });
  const told = element("p", { class: "told", "aria-live": "off" }, HINT);
  const show = (at: number) => {
    slider.value = String(at);
    slider.setAttribute("aria-valuetext", reader.place(at));
    const [wide, high] = [width(), drawing.clientHeight];
    const shapes = reader.marks(wide, at);
    fill(
      marked,
      elementOf(
        shape("svg", { width: wide, height: high, class: "picture", "aria-hidden": "true" }, ...shapes),
      ),
    );
    fill(told, `${reader.place(at)}: ${reader.told(at)}`);
  };
  const leave = () => {
    fill(marked);
    fill(told, HINT);
  };
  // A pointer that moves says nothing aloud: the sentence is for those who move by key.
  const aloud = (isOn: boolean) => told.setAttribute("aria-live", isOn ? "polite" : "off");
  slider.addEventListener("input", () => show(Number(slider.value)));
  slider.addEventListener("focus", () => {
    aloud(true);
    show(Number(slider.value));
  });
  slider.addEventListener("blur", () => {
    aloud(false);
    leave();
  });
  drawing.addEventListener("pointermove", ({ clientX }) => {
    show(reader.nearest(width(), clientX - drawing.getBoundingClientRect().left));
  });
  drawing.addEventListener("pointerdown", ({ clientX }) => {
    show(reader.nearest(width(), clientX - drawing.getBoundingClientRect().left));
  });
  drawing.addEventListener("pointerleave", () => {
    if (document.activeElement !== slider) leave();
  });
  return { slider, marked, told, leave };
}

/**
 * A picture drawn anew for every width of its place, so that its words keep their size in a narrow
 * pane, a wide one and under zoom.
 *
 * @param draw - Makes the picture for a width in CSS pixels.
 * @param caption - How to read it.
 * @param reader - Reads it place by place, under the pointer and by keyboard.
 */
export function figure(draw: (width: number) => Shape, caption: string, reader?: Reader): HTMLElement {
  const place = element("div", { class: reader === undefined ? "drawing" : "drawing readable" });
  let drawn = 0;
  const drawing = element("div", { class: "drawn" });
  const reading = reader === undefined ? undefined : readingOf(place, reader, () => drawn);
  place.append(drawing, ...(reading === undefined ? [] : [reading.marked, reading.slider]));
  new ResizeObserver(() => {
    const width = Math.min(WIDEST, Math.max(NARROWEST, Math.floor(place.clientWidth)));
    if (width === drawn) return;
    drawn = width;
    fill(drawing, elementOf(draw(width)));
    reading?.leave();
  }).observe(place);
  const told = reading === undefined ? [] : [reading.told];
  return element("figure", {}, place, ...told, element("figcaption", { class: "basis" }, caption));
}
