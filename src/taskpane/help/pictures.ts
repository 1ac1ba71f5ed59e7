import { bandChart } from "../charts/band-chart";
import drawings from "../charts/drawings.css?raw";
import { scaleDrawing } from "../charts/scale-drawing";
import { type Shape, SVG } from "../charts/svg";
import pane from "../pane.css?raw";
import { CELSIUS, FAHRENHEIT } from "../tempering/temper-scales";
import { escaped } from "./html";
import { answerOf } from "./worked-call";

const WIDTH = 520;

function markup({ tag, attributes, children }: Shape): string {
  const written = Object.entries(attributes).map(([name, value]) => ` ${name}="${escaped(String(value))}"`);
  const inside = children.map((child) => (typeof child === "string" ? escaped(child) : markup(child)));
  return `<${tag}${written.join("")}>${inside.join("")}</${tag}>`;
}

/** The pane's light colours and the style of its drawings: a file is shown where the pane's own sheet is not read. */
function style(): string {
  const [, light = ""] = /\.pane \{([^}]*)\}/.exec(pane) ?? [];
  return `svg{background:#ffffff;${light}}${drawings.replaceAll(".pane ", "")}`;
}

/** A drawing of the pane as a file of its own. */
function file({ tag, attributes, children }: Shape): string {
  const whole: Shape = {
    tag,
    attributes: { xmlns: SVG, ...attributes },
    children: [...children, { tag: "style", attributes: {}, children: [style()] }],
  };
  return `${markup(whole)}\n`;
}

/** Hardness against temper with its band, as the sheet's own TEMPER_CURVE gives it. */
export function curvePicture(steel: string): string {
  const rows = answerOf("TEMPER_CURVE", [steel, 150, 300, 10]).map((row) => row.map(Number));
  const chart = {
    title: `${steel}: hardness after a 2 h temper with its band`,
    description: "Hardness falls as the temper rises; the band holds nine cases in ten.",
    points: rows.map(([x = 0, low = 0, likely = 0, high = 0]) => ({ x, low, likely, high })),
    xName: "temper of the steel, 2 h",
    yName: "HRC",
    xScales: [CELSIUS, FAHRENHEIT],
  };
  return file(bandChart(chart, WIDTH));
}

interface Stations {
  readonly x: readonly number[];
  readonly width: readonly number[];
  readonly balance: number;
}

/** A blade's profile to scale from its stations, its spine straight, with the balance point. */
export function profilePicture({ x, width, balance }: Stations): string {
  const edge = x.map((at, i) => [at, width[i] ?? 0] as const);
  const drawing = {
    title: "Profile of the blade to scale with its balance point",
    description: `The blade is ${Math.max(...x)} mm long and balances ${balance.toFixed(0)} mm from the heel.`,
    outline: [...x.map((at) => [at, 0] as const), ...edge.reverse()],
    places: [{ at: balance, name: `balance ${balance.toFixed(0)} mm from the heel` }],
  };
  return file(scaleDrawing(drawing, WIDTH));
}
