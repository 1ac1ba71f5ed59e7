import { temperCurveFigure } from "../../taskpane/tempering/temper-curve-figure";
import { besideLabel, type PrintedPage } from "./printed-pages";

const ORDER = "Heat-treat order";
/** How the order writes its tempers: "2 × 2 h at 228 °C (442 °F)". */
const TEMPERS = /(\d+) × ([\d.]+) h at (\d+(?:\.\d+)?) °C/;

/** The tempering curve of the steel of a heat-treat order, with its temper and the hardness aimed at. */
export function orderCurve(sheet: string, page: PrintedPage): HTMLElement[] {
  if (sheet !== ORDER) return [];
  const steel = besideLabel(page, "Grade");
  const [, cycles, hours, celsius] = TEMPERS.exec(besideLabel(page, "Tempers, suggested")) ?? [];
  if (steel === "" || cycles === undefined || hours === undefined || celsius === undefined) return [];
  const target = besideLabel(page, "Aim HRC");
  const drawing = document.createElement("div");
  drawing.className = "pane order-curve";
  drawing.dataset.theme = "light";
  const parts = temperCurveFigure(
    { steel, temper: `${celsius} °C`, hours, cycles, target },
    { use: "", others: [], own: [] },
  );
  drawing.append(...parts.filter(({ tagName }) => tagName !== "DETAILS"));
  // What reads the curve on the screen has no use on paper.
  for (const part of drawing.querySelectorAll(".reader, .marked, .told")) part.remove();
  return [drawing];
}
