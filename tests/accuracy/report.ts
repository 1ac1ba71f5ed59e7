import { UNFITTED_SOURCES } from "./fit-sources";
import { MEASURED, type Measured, REFUSED_ROWS } from "./measured";
import { STATED_SHARES } from "./stated-shares";
import { shareOf, spread } from "./statistics";

const START = "<!-- accuracy: written by npm run accuracy -- --write -->";
const END = "<!-- end of accuracy -->";

const MIN_SHOWN = 0.0001;

/** Three significant digits without a power of ten. */
function digits(figure: number): string {
  if (figure === 0) return "0";
  if (Math.abs(figure) < MIN_SHOWN / 2) return `under ${MIN_SHOWN}`;
  const decimals = Math.max(0, Math.min(4, 2 - Math.floor(Math.log10(Math.abs(figure)))));
  return String(Number(figure.toFixed(decimals)));
}

function percent(share: number | undefined): string {
  return share === undefined ? "-" : `${Math.floor(share * 100 + 1e-9)} %`;
}

const HOW_SEEN: Readonly<Record<string, string>> = {
  READ: "read",
  MEMORY: "from memory",
  DERIVED: "derived",
};

/** "45 sources of published tables took part in no fit: 30 read, 8 from memory, 7 derived". */
function unfittedText(): string {
  const seen = [...UNFITTED_SOURCES.values()];
  const kinds = Object.entries(HOW_SEEN).map(
    ([kind, word]) => `${seen.filter((how) => how === kind).length} ${word}`,
  );
  return `${seen.length} sources of published tables took part in no fit: ${kinds.join(", ")}`;
}

/** One line a table, for the terminal. */
export function printedLines(): string[] {
  const head = [
    "table".padEnd(66),
    "rows",
    "bias".padStart(12),
    "rms".padStart(12),
    "largest".padStart(12),
    "inside the stated band; fitted, from memory",
  ].join(" ");
  const lines = MEASURED.map(({ key, errors, held, unit, fitted, seen }) => {
    const { count, bias, rms, largest } = spread(errors);
    const figures = [bias, rms, largest].map((figure) => digits(figure).padStart(12)).join(" ");
    const marks = [percent(shareOf(held)), fitted ? "fitted" : "", seen === "MEMORY" ? "from memory" : ""];
    return `${key.padEnd(66)} ${String(count).padStart(4)} ${figures} ${unit.padEnd(6)}${marks.filter(Boolean).join(", ")}`;
  });
  const shares = STATED_SHARES.map(
    ({ what, band, inside, rows, how }) =>
      `stated band: ${what}, ${band}: ${inside} of ${rows} (${percent(inside / rows)}), ${how}`,
  );
  return [
    head,
    ...lines,
    ...shares,
    unfittedText(),
    `${REFUSED_ROWS} published tempering rows are refused, each with a sentence`,
  ];
}

const BAR = 10;

function bar(share: number | undefined): string {
  if (share === undefined) return "no band stated";
  const filled = Math.round(share * BAR);
  return `${"█".repeat(filled)}${"░".repeat(BAR - filled)} ${percent(share)}`;
}

/** Quantities that differ only in the unit a source prints belong together, each in its own line. */
function summaryLine(quantity: string, list: readonly Measured[]): string {
  const { count, bias, rms, largest } = spread(list.flatMap(({ errors }) => errors));
  const held = shareOf(list.flatMap((one) => one.held));
  const sources = new Set(list.flatMap((one) => one.sources)).size;
  const memory = list.every(({ seen }) => seen === "MEMORY") ? ", from memory" : "";
  const unit = list[0]?.unit ?? "";
  const figures = [bias, rms, largest].map((figure) => `${digits(figure)} ${unit}`.trim());
  return `| ${quantity} | ${sources}${memory} | ${count} | ${figures.join(" | ")} | ${bar(held)} |`;
}

const HEAD = [
  "| quantity | sources | rows | bias | root mean square | largest | inside the stated band |",
  "|---|---|---|---|---|---|---|",
];

/** Tables that took no part in a fit, by quantity. */
function summary(isShown: (quantity: string) => boolean): string {
  const groups = new Map<string, Measured[]>();
  for (const one of MEASURED.filter(({ fitted }) => !fitted)) {
    const key = one.quantity.replace(/, °F$/, "");
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  const shown = [...groups].filter(([key]) => isShown(key)).sort(([a], [b]) => (a < b ? -1 : 1));
  return [...HEAD, ...shown.map(([key, list]) => summaryLine(key, list))].join("\n");
}

const SHARES_HEAD = ["| band | as stated | rows | inside | rows kept out |", "|---|---|---|---|---|"];

/** Rows that took no part in a fit, against the bands stated. */
function sharesTable(): string {
  const lines = STATED_SHARES.map(
    ({ what, band, inside, rows, how }) => `| ${what} | ${band} | ${rows} | ${bar(inside / rows)} | ${how} |`,
  );
  return [
    `${unfittedText()}.`,
    "",
    "Stated bands on rows that took no part in a fit:",
    "",
    ...SHARES_HEAD,
    ...lines,
  ].join("\n");
}

/** What a smith asks first; README shows these alone. */
const FIRST_ASKED = ["hardness after temper", "hardness as quenched", "blade mass"];

/** The pages that show the table, and the quantities on each. */
export const ACCURACY_PAGES: Readonly<Record<string, (quantity: string) => boolean>> = {
  "README.md": (quantity) => FIRST_ASKED.includes(quantity),
  "assets/help/accuracy.md": () => true,
};

/** A page with its accuracy table brought up to date. */
export function withAccuracy(path: string, page: string): string {
  const start = page.indexOf(START);
  const end = page.indexOf(END);
  const isShown = ACCURACY_PAGES[path];
  if (start < 0 || end < start || isShown === undefined)
    throw new Error(`${path} has lost the marks around its accuracy table`);
  const shares = isShown("stated bands") ? `\n\n${sharesTable()}` : "";
  return `${page.slice(0, start)}${START}\n\n${summary(isShown)}${shares}\n\n${page.slice(end)}`;
}
