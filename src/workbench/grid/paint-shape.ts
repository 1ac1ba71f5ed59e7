import type { Shape } from "../../taskpane/charts/svg";

/** How a kind of shape looks on the canvas, which reads no style sheet. */
interface Paint {
  readonly fill?: string;
  readonly stroke?: string;
  readonly width?: number;
}

interface Inks {
  readonly ink: string;
  readonly paper: string;
  readonly grey: string;
  readonly rule: string;
  readonly accent: string;
  readonly wanted: string;
}

const LIGHT: Inks = {
  ink: "#242424",
  paper: "#ffffff",
  grey: "#d1d1d1b3",
  rule: "#e0e0e0",
  accent: "#115ea3",
  wanted: "#115ea326",
};
const DARK: Inks = {
  ink: "#ffffff",
  paper: "#292929",
  grey: "#666666b3",
  rule: "#525252",
  accent: "#479ef5",
  wanted: "#479ef540",
};

/** Colours of the page around the grid. */
export const inks = (): Inks => (matchMedia("(prefers-color-scheme: dark)").matches ? DARK : LIGHT);

/** As `drawings.css` has it for the pane; a shape without a kind here is not painted. */
const paints = ({ ink, paper, grey, rule, accent, wanted }: Inks): Readonly<Record<string, Paint>> => ({
  band: { fill: grey },
  likely: { stroke: ink, width: 2 },
  grid: { stroke: rule, width: 1 },
  axis: { stroke: ink, width: 1 },
  here: { stroke: accent, width: 1.5 },
  dot: { fill: paper, stroke: ink, width: 1.5 },
  own: { fill: ink, stroke: paper, width: 1 },
  wanted: { fill: wanted },
  aim: { stroke: accent, width: 1 },
});

const FONT = "12px system-ui, 'Segoe UI', Arial, 'Liberation Sans', sans-serif";

function outline({ tag, attributes }: Shape): Path2D | undefined {
  const figure = (name: string) => Number(attributes[name] ?? 0);
  const path = new Path2D(tag === "path" ? String(attributes.d) : "");
  if (tag === "line") {
    path.moveTo(figure("x1"), figure("y1"));
    path.lineTo(figure("x2"), figure("y2"));
  } else if (tag === "rect") path.rect(figure("x"), figure("y"), figure("width"), figure("height"));
  else if (tag === "circle") path.arc(figure("cx"), figure("cy"), figure("r"), 0, 2 * Math.PI);
  else if (tag !== "path") return undefined;
  return path;
}

function paintText(
  canvas: CanvasRenderingContext2D,
  { attributes, children }: Shape,
  { ink, paper }: Inks,
): void {
  const anchor = attributes["text-anchor"];
  canvas.font = FONT;
  canvas.textAlign = anchor === "middle" ? "center" : anchor === "end" ? "right" : "left";
  canvas.lineJoin = "round";
  canvas.strokeStyle = paper;
  canvas.lineWidth = 3;
  const [x, y] = [Number(attributes.x), Number(attributes.y)];
  for (const text of children) {
    if (typeof text !== "string") continue;
    canvas.strokeText(text, x, y);
    canvas.fillStyle = ink;
    canvas.fillText(text, x, y);
  }
}

function paintPath(canvas: CanvasRenderingContext2D, path: Path2D, { fill, stroke, width = 1 }: Paint): void {
  if (fill !== undefined) {
    canvas.fillStyle = fill;
    canvas.fill(path);
  }
  if (stroke === undefined) return;
  canvas.strokeStyle = stroke;
  canvas.lineWidth = width;
  canvas.stroke(path);
}

/** Paints a drawing of the pane on a canvas, its first corner where the canvas has its own. */
export function paintShape(canvas: CanvasRenderingContext2D, shape: Shape, colours: Inks = inks()): void {
  const parts = shape.children.filter((child) => typeof child !== "string");
  for (const part of parts) paintShape(canvas, part, colours);
  if (shape.tag === "text") paintText(canvas, shape, colours);
  const paint = paints(colours)[String(shape.attributes.class ?? "")];
  const path = paint === undefined ? undefined : outline(shape);
  if (paint !== undefined && path !== undefined) paintPath(canvas, path, paint);
}
