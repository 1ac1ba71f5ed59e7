import { mkdirSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { findSteel } from "../../src/core/steel/find";
import { temperAtParameter } from "../../src/core/tempering/hollomon-jaffe";
import { temperCurve } from "../../src/core/tempering/temper-curve";
import { curvePicture, isOnPaper, type PicturePoint } from "../fitting/curve-picture";
import { curveOfRow, parameterOf } from "../fitting/fit";
import { middleHrc, NEVER_FITTED, sound, TEMPER_SOURCES, type TemperRow } from "../fitting/tempering-rows";

/** A grade, and the names under which sources print it. */
const GRADES: readonly (readonly [grade: string, ...names: string[]])[] = [
  ["1045", "1045"],
  ["1075", "1075", "C75S"],
  ["1095", "1095", "T10/T12"],
  ["5160", "5160"],
  ["52100", "52100"],
  ["O1", "O1"],
  ["D2", "D2"],
  ["440C", "440C"],
];

const FOLDER = join(tmpdir(), "blade-metallurgy-temper-curves");
const HOURS = 2;
const SHORTEST_H = 0.25;

function markOf(row: TemperRow): PicturePoint["mark"] {
  if (NEVER_FITTED.has(row.source) || row.kind === "suspect") return "never fitted";
  return sound(row) && curveOfRow(row) !== undefined ? "in the curve" : "check";
}

/** Points of a grade whose hold is long enough for the piece to have reached its temper. */
function pointsOf(names: readonly string[]): PicturePoint[] {
  return [...TEMPER_SOURCES.values()]
    .flatMap(({ rows }) => rows)
    .filter((row) => names.includes(row.grade) && ["point", "suspect"].includes(row.kind))
    .filter(
      ({ hours, hrcLow, temperLow }) =>
        hrcLow !== null && temperLow !== null && (hours ?? HOURS) >= SHORTEST_H,
    )
    .map((row) => ({
      celsius: temperAtParameter(parameterOf(row), HOURS),
      hrc: middleHrc(row),
      mark: markOf(row),
      source: row.source,
    }));
}

mkdirSync(FOLDER, { recursive: true });

test.each(GRADES)("tempering curve of %s beside its published points", (grade, ...names) => {
  const curve = temperCurve(findSteel(grade), { step: 5 }, HOURS);
  const points = pointsOf([grade, ...names]);
  const path = join(FOLDER, `${grade}.svg`);
  writeFileSync(path, curvePicture(grade, curve, points));
  console.info(`${path}: ${points.filter(isOnPaper).length} points`);
  expect(points.length).toBeGreaterThan(4);
  expect(curve.length).toBeGreaterThan(40);
});
