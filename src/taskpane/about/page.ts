import { SOURCE_ADDRESSES } from "../../core/source-addresses";
import { SOURCES, type SourceKey } from "../../core/sources";
import { catalogue } from "../../functions/catalogue";
import { relationsOf, type WorksheetFunction } from "../../functions/declare";
import { errorText, kindText } from "../../functions/evidence";
import type { RenderPage } from "../page";
import { ask, firstRow } from "../parts/ask";
import { element } from "../parts/dom";
import { PREFERENCES_KEY } from "../parts/preferences";
import { STARTED_KEY } from "../parts/started";
import { disclosure, facts, table } from "../parts/tables";

const NOT_VERIFIED = [
  "The add-in was built and tested without Excel: with the vendor’s own function dispatcher, the published schema and this pane in a browser.",
  "Not seen in Excel itself: start-up time, the sentences behind #VALUE! and #N/A on every platform, the look of argument hints, and what an older Excel makes of a formula that spills.",
  "Figures are estimates from published relations. Harden and temper a coupon of your own bar first and read it.",
];

const SEEN: Readonly<Record<string, string>> = {
  READ: "read in a text",
  MEMORY: "recalled, no text seen",
  COMMON: "common practice, no source",
  DERIVED: "worked out from the others",
};

const KEPT: readonly (readonly [string, string])[] = [
  ["Your figures", "In your workbook only. Nothing typed here or in a sheet is sent anywhere."],
  [
    "Units for reading, and that the first page was seen",
    `In this browser’s own storage, under “${PREFERENCES_KEY}” and “${STARTED_KEY}”; without it the pane starts in °C and mm.`,
  ],
  [
    "Workbench",
    "Its sheets as you last left them, in this browser’s database (IndexedDB) on this machine, so that a crash or a reload loses nothing. A file is written only when you save one.",
  ],
  [
    "What is fetched",
    "The pages’ own files, and in Excel office.js from Microsoft’s address. The workbench needs no network.",
  ],
];

/** About: versions, error of the estimates, sources, licences, what was not verified. */
export const render: RenderPage = (root) => {
  const [version = ""] = firstRow(ask("VERSION"));
  root.append(
    element("p", {}, version),
    element("h3", {}, "How good the estimates are"),
    errorTable(),
    element("h3", {}, "Not verified"),
    element("ul", {}, ...NOT_VERIFIED.map((sentence) => element("li", {}, sentence))),
    element("h3", {}, "Sources"),
    sources(),
    element("h3", {}, "What is kept, and where"),
    facts(KEPT, true),
    element("h3", {}, "Licences"),
    licences(),
  );
  return undefined;
};

/** One row a relation, however many functions rest on it. */
function errorTable(): HTMLElement {
  const rows = new Map<string, string[]>();
  for (const relation of catalogue.flatMap((fn: WorksheetFunction) => relationsOf(fn, null))) {
    rows.set(relation.title, [relation.title, errorText(relation), kindText(relation)]);
  }
  const headings = [{ text: "relation" }, { text: "expected error" }, { text: "evidence" }];
  return disclosure(`${rows.size} relations`, () => [
    table("Expected error by relation", headings, [...rows.values()]),
  ]);
}

function sources(): HTMLElement {
  const entries = Object.entries(SOURCES).filter(([, { seen }]) => seen !== "COMMON");
  const items = entries.map(([key, source]) => {
    const name = [source.author, source.title, source.edition].filter((part) => part !== "").join(", ");
    return element(
      "li",
      {},
      `${name}; ${SEEN[source.seen] ?? source.seen}`,
      address(SOURCE_ADDRESSES[key as SourceKey] ?? ""),
    );
  });
  return disclosure(`${entries.length} sources`, () => [element("ul", { class: "sources" }, ...items)]);
}

function address(given: string): HTMLElement | null {
  return /^https?:/.test(given)
    ? element("p", {}, element("a", { href: given, target: "_blank", rel: "noreferrer" }, given))
    : null;
}

function licences(): HTMLElement {
  const notices = element("a", { href: "licences.txt", target: "_blank", rel: "noreferrer" }, "licences.txt");
  const bundled = element("p", {}, "Programs of others in these pages, with their full licences: ", notices);
  return element("div", {}, bundled, dataLicences());
}

/** Terms of data that is not free of them, besides our own. */
function dataLicences(): HTMLElement {
  // The build keeps these licences alone (webpack.config.js).
  const named = Object.values(SOURCES).filter(({ licence = "" }) => /CC|LGPL|MIT|Apache/.test(licence));
  return facts(
    [
      ["Blade Metallurgy", "MIT licence"],
      ["office.js", "Microsoft, under its own terms; loaded from Microsoft’s address"],
      [
        "Colours, spacing and type sizes",
        "values of Microsoft’s Fluent themes (@fluentui/tokens, MIT licence)",
      ],
      ...named.map(({ title, author, licence }): [string, string] => [
        [author, title].filter(Boolean).join(", "),
        licence,
      ]),
    ],
    true,
  );
}
