import { freshId } from "../parts/fresh-id";

export const SVG = "http://www.w3.org/2000/svg";

type Attributes = Readonly<Record<string, string | number>>;

/** An element of a drawing as data, so that a page can show it and a file can hold it. */
export interface Shape {
  readonly tag: string;
  readonly attributes: Attributes;
  readonly children: readonly (Shape | string)[];
}

/** An element with attributes; text is never read as markup. */
export const shape = (tag: string, attributes: Attributes, ...children: Shape["children"]): Shape => ({
  tag,
  attributes,
  children,
});

export interface PictureText {
  readonly title: string;
  /** What the picture shows, for those who do not see it. */
  readonly description: string;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** A picture that is read aloud as its title and description; its figures stand in a table beside it. */
export function picture(text: PictureText, { width, height }: Size, ...parts: readonly Shape[]): Shape {
  const title = freshId("title");
  const description = freshId("description");
  return shape(
    "svg",
    {
      viewBox: `0 0 ${width} ${height}`,
      width,
      height,
      role: "img",
      class: "picture",
      "aria-labelledby": title,
      "aria-describedby": description,
    },
    shape("title", { id: title }, text.title),
    shape("desc", { id: description }, text.description),
    ...parts,
  );
}

/** Words inside a picture. */
export function label(x: number, y: number, anchor: "start" | "middle" | "end", text: string): Shape {
  return shape("text", { x, y, "text-anchor": anchor, class: "mark" }, text);
}

/** About the width of a letter in pixels, rather wide than narrow. */
const LETTER = 7;

/** Words right of a place where they fit between two limits, else left of it, else against the limit. */
export function labelBeside(
  x: number,
  y: number,
  text: string,
  [left, right]: readonly [number, number],
): Shape {
  const long = text.length * LETTER;
  if (x + 4 + long <= right) return label(x + 4, y, "start", text);
  if (x - 4 - long >= left) return label(x - 4, y, "end", text);
  return label(right, y, "end", text);
}

/** Slanted lines to fill an area with: the pattern and the value of `fill` that takes it. */
export function hatching(kind: "hard" | "wary"): { pattern: Shape; fill: string } {
  const id = freshId("hatch");
  const stroke = shape("line", { x1: 0, x2: 0, y1: 0, y2: 6, class: `hatch ${kind}` });
  const turn = kind === "hard" ? 45 : -45;
  const attributes = {
    id,
    width: 6,
    height: 6,
    patternUnits: "userSpaceOnUse",
    patternTransform: `rotate(${turn})`,
  };
  return { pattern: shape("defs", {}, shape("pattern", attributes, stroke)), fill: `url(#${id})` };
}
