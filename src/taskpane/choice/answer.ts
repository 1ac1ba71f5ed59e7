import type { Block } from "../../host/port";
import { cellText, type Reply } from "../parts/ask";
import { element } from "../parts/dom";
import { disclosed, facts, refusalNote, table } from "../parts/tables";
import { celsiusText } from "../parts/words";

/** A row of STEELS_FOR as texts, under the names of its columns. */
export interface Suggestion {
  readonly names: string;
  readonly status: string;
  readonly temper: string;
  readonly likely: string;
  readonly chance: string;
  readonly through: string;
  readonly toughness: string;
  readonly edge: string;
  readonly rust: string;
  readonly ease: string;
  readonly price: string;
  readonly why: string;
  readonly givesUp: string;
}

function suggestionsOf({ rows }: Reply): readonly Suggestion[] {
  return rows.map((row) => {
    const [names = "", status = "", temper = "", likely = "", chance = "", through = "", ...rest] =
      row.map(cellText);
    const [toughness = "", edge = "", rust = "", ease = "", price = "", why = "", givesUp = ""] = rest;
    return {
      names,
      status,
      temper,
      likely,
      chance,
      through,
      toughness,
      edge,
      rust,
      ease,
      price,
      why,
      givesUp,
    };
  });
}

const CANNOT = ["ruled out", "does not harden", "out of reach"];

export const isOpen = ({ status, names }: Suggestion) => names !== "" && !CANNOT.includes(status);

/** The name under which a steel is taken; its twins stand behind it. */
export function nameOf({ names }: Suggestion): string {
  return names.split(", ")[0] ?? "";
}

const percent = (chance: string) => `${Math.round(Number(chance) * 100)} %`;

/** What to expect after the temper, in a sentence. */
function temperSentence({ temper, likely, chance }: Suggestion): string {
  if (temper === "" || chance === "") return "No temper is held for it: read a coupon.";
  return `Tempered at ${celsiusText(temper)} expect about ${likely} HRC, inside the band in ${percent(chance)} of cases.`;
}

/** One of the first steels: what it is, why, what to expect, what it gives up. */
function suggestionBlock(suggestion: Suggestion, take: (name: string) => HTMLElement | null): HTMLElement {
  const name = nameOf(suggestion);
  const twins = suggestion.names.split(", ").slice(1);
  const also = twins.length === 0 ? "" : ` Sold also as ${twins.join(", ")}.`;
  const price = suggestion.price === "" ? "" : ` Price a kg ${suggestion.price}.`;
  const gives = suggestion.givesUp === "" ? "" : ` What it gives up: ${suggestion.givesUp}`;
  return element(
    "section",
    { class: "line", "aria-label": name },
    element("h3", {}, name),
    element("p", {}, `${suggestion.why} ${temperSentence(suggestion)}${gives}${price}${also}`),
    take(name),
  );
}

const HEADINGS = [
  { text: "steel" },
  { text: "HRC", isFigure: true },
  { text: "chance", isFigure: true },
  { text: "gives up" },
];

function restTable(rest: readonly Suggestion[]): HTMLElement | null {
  if (rest.length === 0) return null;
  const rows = rest.map((suggestion) => {
    const { likely, chance, givesUp } = suggestion;
    return [nameOf(suggestion), likely, chance === "" ? "" : percent(chance), givesUp];
  });
  return disclosed("The next ones", [table("Steels after the first three", HEADINGS, rows)]);
}

function barredList(barred: readonly Suggestion[]): HTMLElement | null {
  if (barred.length === 0) return null;
  const pairs = barred.map(({ names, status, why }) => [names === "" ? status : names, why] as const);
  return element(
    "section",
    { "aria-label": "Not these" },
    element("h3", {}, "Not these, and why"),
    facts(pairs, true),
  );
}

const TOLD = 3;

/** The answer as text first: three steels in sentences, the next in a table, what cannot be with its reason. */
export function answerBlocks(
  reply: Reply,
  hasRack: boolean,
  take: (name: string) => HTMLElement | null,
): readonly (HTMLElement | null)[] {
  if (reply.refusal !== null) return [refusalNote(reply.refusal)];
  const all = suggestionsOf(reply);
  const open = all.filter(isOpen);
  const barred = all.filter((suggestion) => !isOpen(suggestion));
  const lead =
    open.length === 0
      ? `Nothing ${hasRack ? "in the rack " : ""}fits what was asked.`
      : `${Math.min(open.length, TOLD)} to begin with; no order of merit beyond the reasons given.`;
  return [
    element("p", { class: "verdict", role: "status" }, lead),
    ...open.slice(0, TOLD).map((suggestion) => suggestionBlock(suggestion, take)),
    restTable(open.slice(TOLD)),
    hasRack || open.length === 0 ? barredList(barred) : null,
  ];
}

const COLUMNS = [
  "steel",
  "against the band",
  "temper °C",
  "likely HRC",
  "chance",
  "hardens through mm",
  "toughness 1-9",
  "edge holding 1-9",
  "rust",
  "ease",
  "price a kg",
  "why",
  "gives up",
];

/** The list as a table for the sheet. */
export function listBlock(use: string, reply: Reply): Block {
  const plain = (cell: Reply["rows"][number][number]) => (typeof cell === "number" ? cell : cellText(cell));
  const padded = (first: string) => COLUMNS.map((_, at) => (at === 0 ? first : ""));
  return {
    rows: [padded(`Steels for: ${use}`), COLUMNS, ...reply.rows.map((row) => row.map(plain))],
    heading: 1,
  };
}
