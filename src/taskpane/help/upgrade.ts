import type { BladeStatus } from "../../core/blade/status";
import { functionNamed, NAMESPACE } from "../../functions/catalogue";
import { code, escaped, table } from "./html";

/** Words of 0.1 beside those that say it now. READINGS says "inside the limits" as before. */
const STATUS_WORDS: readonly (readonly [old: string, now: readonly BladeStatus[], meaning: string])[] = [
  [
    "inside the usual band",
    ["inside", "likely inside"],
    "a careful reading lies in the band with a chance of 0.9 and more, or of 0.6 and more",
  ],
  ["HIGH", ["too hard"], "of a blade; a price over the ceiling, a content and a mass still say HIGH"],
  ["LOW", ["too soft"], "of a blade; a content and a mass still say LOW"],
  ["DOUBTFUL", ["uncertain", "not known"], "part of the range lies outside the band, or nothing is known"],
  [
    "",
    ["out of reach", "does not harden"],
    "new: no temper, or no quench that was asked for, gives the band",
  ],
];

/** A change of what a function takes or gives; the build stops where a label is not there. */
interface Changed {
  readonly name: string;
  readonly labels: readonly string[];
  readonly says: string;
}

const CHANGED: readonly Changed[] = [
  {
    name: "ASSESS",
    labels: ["chance", "next step", "cautions"],
    says: "cautions were the second column and are the fourth: INDEX(…,1,2) now gives the chance",
  },
  {
    name: "RUN_PLAN",
    labels: ["chance", "next step", "soak min", "quench words", "tempers"],
    says: "five columns more at the end; the others stand where they stood",
  },
  { name: "ASSESS", labels: ["thickness"], says: "one argument more at the end" },
  { name: "BAND", labels: ["steel"], says: "one argument more at the end" },
  { name: "MASS", labels: ["flat or rib width", "rib height"], says: "two arguments more at the end" },
  { name: "RECIPE", labels: ["temper hours", "temper cycles"], says: "two arguments more at the end" },
  { name: "STEEL", labels: ["show"], says: "one argument more at the end" },
];

const NEW = [
  "BAND_TEMPER",
  "BEST_OFFER",
  "CLADDING",
  "OFFERS_COMPARED",
  "STEELS_FOR",
  "STEEL_TRAITS",
  "TRADE_OFF",
  "TREATMENT",
] as const;

function declared(name: string) {
  const fn = functionNamed(name);
  if (fn === undefined) throw new Error(`the notes on upgrading name ${name}, which is no function`);
  return fn;
}

function changedRow({ name, labels, says }: Changed): string[] {
  const fn = declared(name);
  const columns = fn.shape === "scalar" ? [fn.result] : fn.result;
  const known = new Set([...Object.values(fn.parameters), ...columns].map(({ label }) => label));
  for (const label of labels)
    if (!known.has(label)) throw new Error(`the notes on upgrading name "${label}" of ${name}`);
  return [code(`${NAMESPACE}.${name}`), escaped(labels.join(", ")), escaped(says)];
}

function wordRow([old, now, meaning]: (typeof STATUS_WORDS)[number]): string[] {
  return [old, now.join(", "), meaning].map(escaped);
}

/** What somebody with workbooks of 0.1 has to look at, held against the declarations. */
export function upgradeNotes(): string {
  const links = NEW.map((name) => `<a href="${declared(name).name}.html">${name}</a>`).join(", ");
  return [
    "<h2>From 0.1 to 1.0</h2>",
    "<p>No function has gone and no argument has moved. Look at formulas and conditional formats that search for a status word, and at formulas that take a column of a result by its number.</p>",
    table(
      "Status words of ASSESS, RUN_PLAN, READINGS and the sheets of the plan",
      ["in 0.1", "in 1.0", "meaning"],
      STATUS_WORDS.map(wordRow),
    ),
    table("New columns and arguments", ["function", "what is new", "what it means"], CHANGED.map(changedRow)),
    `<p>New functions: ${links}.</p>`,
    "<p>A plan of 0.1 goes on working, but colours none of the new words. For those and the new sheets, make a new plan from it, which takes over what was typed: <code>npm run -s template -- --from OLD.xlsx --lines 12 -o NEW.xlsx</code></p>",
  ].join("\n");
}
