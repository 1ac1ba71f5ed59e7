import { bladeOf } from "../../core/mechanics/beam";
import { heldBlade } from "../../core/mechanics/flex";
import { parseMeasure } from "../../functions/measure";
import { stationsOf } from "../../functions/shape/station-arguments";
import { figure } from "../charts/figure";
import { type Path, scaleDrawing } from "../charts/scale-drawing";
import { firstRow } from "../parts/ask";
import { figureReading } from "../parts/reading";
import type { BladeInput } from "./blade-form";
import { asked, bladeArguments, type Offered, typedArgument } from "./calls";

/** Where the blade is loaded if nothing is said: a point cannot bear a load. */
const LOADED = 0.9;

/** Figures of a bend to the set, with the sentence that belongs to them. */
export interface Bending {
  readonly facts: readonly (readonly [name: string, value: string])[];
  readonly caution: string;
  readonly refusal: string | null;
  readonly formulas: readonly Offered[];
  /** The blade bent to its set; nothing without a hardness. */
  readonly drawn: HTMLElement | undefined;
}

function heel({ x }: BladeInput): number {
  return x[0] ?? 0;
}

function loadPlace(blade: BladeInput): number {
  const [start, tip] = [heel(blade), blade.x.at(-1) ?? 0];
  return blade.loadAt === "" ? start + LOADED * (tip - start) : parseMeasure(blade.loadAt, "length", "mm");
}

const whole = (value: string | undefined) => Math.round(Number(value)).toString();

/** What a row of FLEX says in words. */
function told(row: readonly string[], at: number): Bending["facts"] {
  const [, stiffness, , , , set, way, bend, low, high, bendLow, bendHigh] = row;
  const stiff = [
    "Stiffness",
    `${Number(stiffness).toPrecision(3)} N/mm at ${figureReading(at.toFixed(0), "mm")}`,
  ] as const;
  if (set === "") return [stiff];
  return [
    stiff,
    ["Takes a set from", `${whole(low)} to ${whole(high)} N, likely ${whole(set)} N`],
    [
      "Bent by then",
      `${figureReading(whole(way), "mm")} and ${whole(bend)}° (${whole(bendLow)} to ${whole(bendHigh)}°)`,
    ],
  ];
}

/**
 * How the blade bends, held at its heel, and where it begins to take a set: what FLEX answers, and the bent
 * shape drawn.
 */
export function bendingOf(blade: BladeInput): Bending {
  const at = loadPlace(blade);
  const { reply, formula } = asked("FLEX", [
    ...bladeArguments(blade),
    typedArgument(blade.hrc),
    null,
    at,
    heel(blade) === 0 ? null : heel(blade),
    typedArgument(blade.temper),
  ]);
  if (reply.refusal !== null) {
    return { facts: [], caution: "", refusal: reply.refusal, formulas: [], drawn: undefined };
  }
  const row = firstRow(reply);
  const [load, bend] = [Number(row[5]), Number(row[7])];
  return {
    facts: told(row, at),
    caution: `Bending: ${row[12]}.`,
    refusal: null,
    formulas: [["Stiffness and set in thirteen cells", formula]],
    drawn: row[5] === "" ? undefined : bentPicture(blade, { at, load, bend }),
  };
}

interface Set {
  /** mm */
  readonly at: number;
  /** N */
  readonly load: number;
  /** ° */
  readonly bend: number;
}

/** A place of the bent middle line with half the thickness there, mm. */
interface Along {
  readonly along: number;
  readonly across: number;
  readonly half: number;
}

/** The line bent as far as the load, and from there straight on to the tip. */
function bentLine(blade: BladeInput, { at, load }: Set): Along[] {
  const every = (value: number) => blade.x.map(() => value);
  const { edge, bevelHeight, curve } = blade;
  const beam = bladeOf(
    stationsOf({ ...blade, edge: every(edge), bevelHeight: every(bevelHeight), curve: every(curve) }),
    7.85,
  );
  const line = heldBlade(beam, heel(blade), at).line(load);
  const bent = line.map(({ x, along, across }) => ({ along, across, half: beam.at(x).thickness / 2 }));
  const [before, end] = [bent.at(-2), bent.at(-1)];
  if (before === undefined || end === undefined) return bent;
  const [dx, dy] = [end.along - before.along, end.across - before.across];
  const step = Math.hypot(dx, dy);
  const beyond = blade.x
    .filter((x) => x > at)
    .map((x) => {
      const way = (x - at) / step;
      return { along: end.along + dx * way, across: end.across + dy * way, half: beam.at(x).thickness / 2 };
    });
  return [...bent, ...beyond];
}

/** Both faces of a line, half the thickness to either side of it. */
function faces(line: readonly Along[]): Path {
  const side = (sign: 1 | -1): Path =>
    line.map(({ along, across, half }, index) => {
      const [before, after] = [line[Math.max(0, index - 1)], line[index + 1] ?? line[index]];
      const [dx, dy] = [
        (after?.along ?? 0) - (before?.along ?? 0),
        (after?.across ?? 0) - (before?.across ?? 0),
      ];
      const length = Math.hypot(dx, dy);
      return [along - (sign * half * dy) / length, across + (sign * half * dx) / length] as const;
    });
  return [...side(-1), ...[...side(1)].reverse()];
}

/** The blade seen on its back, straight and bent to where the set begins. */
function bentPicture(blade: BladeInput, set: Set): HTMLElement {
  const { x, thickness } = blade;
  const line = bentLine(blade, set);
  const loaded = line[line.length - 1 - x.filter((place) => place > set.at).length];
  const straight = x.map((place, at) => ({
    along: place - heel(blade),
    across: 0,
    half: (thickness[at] ?? 0) / 2,
  }));
  const [load, bend] = [set.load.toFixed(0), set.bend.toFixed(0)];
  const drawing = {
    title: "The blade bent to its set, to scale",
    description: `Held at its heel and loaded across the flat at ${set.at.toFixed(0)} mm, the blade begins to take a set at ${load} N: the load has gone ${(loaded?.across ?? 0).toFixed(0)} mm across and the blade there is bent by ${bend}°.`,
    outline: faces(line),
    before: faces(straight),
    spots: [
      { at: [0, 0] as const, words: ["", "held"] },
      { at: [loaded?.along ?? 0, loaded?.across ?? 0] as const, words: [`${load} N`, `${bend}°`] },
    ],
    tallest: 320,
  };
  return figure(
    (pixels) => scaleDrawing(drawing, pixels),
    "The blade seen on its back, to scale: dashed as it is, and bent to where a sound blade begins to take a set.",
  );
}
