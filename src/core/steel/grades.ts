import table from "../../data/steel/grades.json";
import { type ColumnReader, number, oneOf, orNull, records, sourceKey, text } from "../table";
import { ELEMENTS } from "./composition";
import { limitsFrom } from "./limits";
import { FAMILIES, type Grade, SYSTEMS, type System } from "./steel";

const STATUS = {
  read: "read",
  high: "recalled, high confidence",
  medium: "recalled, medium confidence",
  low: "recalled, low confidence",
} as const satisfies Record<string, Grade["status"]>;

const word = oneOf(["read", "high", "medium", "low"]);
const element = oneOf(ELEMENTS);

/** A cell that lists several words; empty where it lists none. */
function split<T>(separator: string, read: ColumnReader<T>): ColumnReader<readonly T[]> {
  return (cell) => (cell === "" ? [] : text(cell).split(separator).map(read));
}

/** The table as printed, one record a row, in the order of its columns. */
function printedGrades(): readonly Grade[] {
  return records(table, {
    designation: text,
    aliases: split("; ", text),
    system: oneOf(SYSTEMS),
    standard: text,
    uns: text,
    enNumber: text,
    family: oneOf(FAMILIES),
    limits: (cell) => limitsFrom(text(cell)),
    density: orNull(number),
    densitySource: (cell) => (cell === "" ? null : sourceKey(cell)),
    status: (cell) => STATUS[word(cell)],
    recalled: split(" ", element),
    source: sourceKey,
  });
}

/** What people write in front of a name to tell twins apart. */
const PREFIX: Readonly<Partial<Record<System, string>>> = {
  "SAE/AISI": "SAE",
  "AISI tool": "AISI",
  "AISI stainless": "AISI",
};

/** A name that two systems print gets the system in front; the bare name stays an alias of both, so that it is asked about. */
function withUniqueNames(grades: readonly Grade[]): Grade[] {
  const count = new Map<string, number>();
  for (const { designation } of grades) count.set(designation, (count.get(designation) ?? 0) + 1);
  return grades.map((grade) => {
    if (count.get(grade.designation) === 1) return grade;
    const { designation, system, aliases } = grade;
    return {
      ...grade,
      designation: `${PREFIX[system] ?? system} ${designation}`,
      aliases: [...aliases, designation],
    };
  });
}

const CLASS_NAME = /^(.+) \(.+\)$/;

/** A grade sold in carbon classes, "M2 (regular C)" and "M2 (high C)", also exists as the bare name with the carbon left open. */
function withClassedGrades(grades: readonly Grade[]): Grade[] {
  const result: Grade[] = [];
  for (const grade of grades) {
    const name = CLASS_NAME.exec(grade.designation)?.[1];
    if (name !== undefined && !result.some(({ designation }) => designation === name)) {
      result.push(classedGrade(name, grades));
    }
    result.push(grade);
  }
  return result;
}

function classedGrade(name: string, grades: readonly Grade[]): Grade {
  const classes = grades.filter(({ designation }) => CLASS_NAME.exec(designation)?.[1] === name);
  const [first] = classes;
  if (first === undefined) throw new Error(`no class of ${name}`);
  const lows = classes.map(({ limits }) => limits.C?.low ?? 0);
  const highs = classes.map(({ limits }) => limits.C?.high ?? 0);
  const carbon = { low: Math.min(...lows), high: Math.max(...highs) };
  return { ...first, designation: name, limits: { ...first.limits, C: carbon } };
}

let loaded: readonly Grade[] | undefined;

/** Every grade of the table, in its order; read on first use. */
export function allGrades(): readonly Grade[] {
  loaded ??= withClassedGrades(withUniqueNames(printedGrades()));
  return loaded;
}

/** Grades sold under a bare name by carbon class or suffix: those of "W1" are W1-8 and so on. */
export function classesOf({ designation }: Grade): readonly Grade[] {
  const starts = [`${designation}-`, `${designation} (`];
  return allGrades().filter((grade) => starts.some((start) => grade.designation.startsWith(start)));
}
