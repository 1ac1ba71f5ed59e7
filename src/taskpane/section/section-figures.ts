import { quenchSection } from "../../core/hardening/section-quench";
import { hardenedMm, type SectionPoint, sectionPoints } from "../../core/hardening/section-report";
import { Refusal } from "../../core/refusal";
import { readArgument, readArguments } from "../../functions/arguments";
import type { Values } from "../../functions/declare";
import { sectionInputs, sectionParameters } from "../../functions/hardening/section-arguments";
import type { BandPoint } from "../charts/band-chart";
import { figure } from "../charts/figure";
import { type AxisMark, PLOT_SIDE } from "../charts/frame";
import { readChart } from "../charts/read-chart";
import { type Path, type Place, scaleDrawing } from "../charts/scale-drawing";
import { ask, firstRow } from "../parts/ask";

/** A section after the quench, ready to be drawn. */
export interface QuenchedSection {
  readonly name: string;
  readonly widthMm: number;
  readonly spineMm: number;
  readonly edgeMm: number;
  readonly points: readonly SectionPoint[];
  /** Hardened from the edge, mm: at worst, likely, at best. */
  readonly depthMm: readonly [soft: number, likely: number, hard: number];
}

/**
 * Reads what was typed as a cell is read and runs the calculation behind the section functions.
 *
 * @throws Refusal as those functions refuse.
 */
export function quenchedSection(given: readonly string[]): QuenchedSection {
  const read = readArguments(sectionParameters, given).map(({ key, parameter, values: [value] }) => {
    const settled = readArgument(value, parameter);
    if (settled instanceof Refusal) throw settled;
    return [key, settled];
  });
  const inputs = sectionInputs(Object.fromEntries(read) as Values<typeof sectionParameters>);
  const band = quenchSection(inputs);
  return {
    name: `${inputs.steel.name} in ${inputs.quench.word}`,
    widthMm: inputs.widthMm,
    spineMm: inputs.spineMm,
    edgeMm: inputs.edgeMm,
    points: sectionPoints(band),
    depthMm: [band.soft.depthMm, hardenedMm(inputs, band), band.hard.depthMm],
  };
}

const LOWEST_HRC = 20;
const HRC_MARKS = [20, 40, 50, 60, 65];

/** The lowest row of the low-alloy table that carries both scales; what lies a hair under it is drawn there. */
const LOWEST_ROW_HRC = 20.3;

/** Vickers of a Rockwell C figure by the table that the section functions read. */
function vickers(hrc: number): number {
  const reply = ask("HARDNESS", Math.max(hrc, LOWEST_ROW_HRC), "HRC", "HV", "low alloy");
  return Number(firstRow(reply)[0]);
}

/** The band in Vickers: under 20 HRC the Rockwell C scale has no figures to draw. */
function inVickers({ fromEdgeMm, low, high, hvLow, hvLikely, hvHigh }: SectionPoint): BandPoint {
  return {
    x: fromEdgeMm,
    low: low === undefined ? Math.min(hvLow, vickers(LOWEST_HRC)) : vickers(low),
    likely: hvLikely,
    high: high === undefined ? hvHigh : vickers(high),
  };
}

const hrcMarks = (): AxisMark[] => HRC_MARKS.map((hrc) => ({ at: vickers(hrc), text: String(hrc) }));

const hrcText = (hrc: number | undefined) => (hrc === undefined ? "under 20" : hrc.toFixed(0));

function inWords({ name, points }: QuenchedSection): string {
  const at = ({ low, high }: SectionPoint) => `${hrcText(low)} to ${hrcText(high)} HRC`;
  const [edge, spine] = [points[0], points.at(-1)];
  if (edge === undefined || spine === undefined) return name;
  return `${name}: ${at(edge)} at the edge, ${at(spine)} at the spine. Every figure is in the table below.`;
}

/** Hardness from edge to spine with its band. */
export function hardnessAcross(section: QuenchedSection): HTMLElement {
  const chart = {
    title: "Hardness across the section",
    description: inWords(section),
    points: section.points.map(inVickers),
    xSpan: [0, section.widthMm] as const,
    xName: "mm from the edge",
    yName: "HRC",
    yMarks: hrcMarks(),
    yAlso: "HV",
  };
  const { points } = section;
  return readChart(
    chart,
    "Line: likely. Band: nine blades in ten. Drawn by Vickers, since Rockwell C ends at 20.",
    {
      name: chart.title,
      start: 0,
      place: (at) => `${points[at]?.fromEdgeMm.toFixed(1)} mm from the edge`,
      told: (at) => toldAt(points[at]),
    },
  );
}

function toldAt(point: SectionPoint | undefined): string {
  if (point === undefined) return "";
  const { low, likely, high, hvLikely } = point;
  return `likely ${hrcText(likely)} HRC (${hvLikely.toFixed(0)} HV), nine blades in ten ${hrcText(low)} to ${hrcText(high)}.`;
}

/** From the edge to a depth, edge at the left. */
function taper({ widthMm, spineMm, edgeMm }: QuenchedSection, toMm: number): Path {
  const half = (mm: number) => (edgeMm + (mm / widthMm) * (spineMm - edgeMm)) / 2;
  return [
    [0, -half(0)],
    [toMm, -half(toMm)],
    [toMm, half(toMm)],
    [0, half(0)],
  ];
}

/** Where the hardened part ends; nowhere where even the worst case reaches the spine. */
function depths({ depthMm: [soft, likely, hard], widthMm }: QuenchedSection): Place[] {
  if (soft >= widthMm) return [];
  const words = (mm: number) => (mm >= widthMm ? "to the spine" : `${mm.toFixed(0)} mm`);
  const places: Place[] = [
    { at: soft, name: `at worst ${words(soft)}`, isLimit: true },
    { at: likely, name: `likely ${words(likely)}` },
    { at: hard, name: `at best ${words(hard)}`, isLimit: true },
  ];
  return places;
}

/** The section to scale under the chart, hardened part hatched. */
export function sectionToScale(section: QuenchedSection): HTMLElement {
  const { name, widthMm, spineMm, edgeMm, depthMm } = section;
  const [, likely] = depthMm;
  const places = depths(section);
  const hardened =
    places.length === 0
      ? "hardened to the spine"
      : `hardened ${places.map((place) => place.name).join(", ")}`;
  const drawing = {
    title: "The section to scale",
    description: `${name}, ${widthMm} mm wide, ${edgeMm} mm at the edge, ${spineMm} mm at the spine, ${hardened}.`,
    outline: taper(section, widthMm),
    hatched: likely > 0 ? taper(section, Math.min(likely, widthMm)) : undefined,
    places,
    side: PLOT_SIDE,
  };
  return figure(
    (width) => scaleDrawing(drawing, width),
    "To scale both ways, edge at the left, spine at the right. Hatched: hardened to half martensite or more, likely case; dashed: the ends of its range.",
  );
}
