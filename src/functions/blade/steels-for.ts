import { type Choice, type OfferedSteel, steelsForInParts } from "../../core/blade/choice";
import { nothingFits } from "../../core/blade/choice-bars";
import { CHOICE_ORDER } from "../../core/blade/choice-order";
import { STEEL_BY_USE } from "../../core/blade/suitability";
import { MAX_PLATE } from "../../core/hardening/max-section";
import { attempt, InvalidValue, NotAvailable, Refusal } from "../../core/refusal";
import { findSteel } from "../../core/steel/find";
import { RATING_RELATION, TOOL_STEEL_RATINGS } from "../../core/steel/ratings";
import { PASSIVITY } from "../../core/steel/stainless";
import type { Steel } from "../../core/steel/steel";
import { EMBRITTLEMENT } from "../../core/tempering/embrittlement";
import { temperingRelations } from "../../core/tempering/relations";
import { type Answer, tableFunction } from "../declare";
import { besideRow, type Column, isEmptyColumn } from "../lists";
import { money } from "../money/arguments";
import { numberOrNothing, optionalNumber, rangeParameter, textOrNothing } from "../parameters";
import { bladeLength, quench, shownChance, thickness } from "./blade-arguments";
import { use } from "./use-argument";

const WORDS: Readonly<Record<string, boolean | undefined>> = { yes: true, no: false, either: undefined };

/** A question of yes and no that may be left open. */
function yesNo(label: string, help: string) {
  const accepts = "yes, no or either";
  return textOrNothing<boolean | undefined>({
    label,
    kind: "word",
    help,
    accepts,
    find: (given) => {
      const word = String(given).toLowerCase();
      if (Object.hasOwn(WORDS, word)) return WORDS[word];
      throw new InvalidValue(`${label}: "${given}" given; give ${accepts}`);
    },
  });
}

/** The steels of a cell, or the refusal of a name that is none: it costs its own row and no other. */
interface Named {
  readonly steels: readonly (Steel | Refusal)[];
}

/** A cell may hold one steel, or several with commas or semicolons between them. */
function namedIn(given: string | number): Named {
  const whole = attempt(() => findSteel(given));
  const names = String(given)
    .split(/[,;\n]/)
    .map((name) => name.trim());
  if (!(whole instanceof Refusal) || names.length < 2) return { steels: [whole] };
  return { steels: names.filter((name) => name !== "").map((name) => attempt(() => findSteel(name))) };
}

const among = rangeParameter(
  textOrNothing<Named>({
    label: "among",
    kind: "steel",
    help: 'Steels to choose from, a column or "5160, 6150": your rack or a supplier\'s list; every grade of the library where left out.',
    accepts: 'grades such as "1095"',
    find: namedIn,
  }),
);

interface Listed {
  readonly offered: OfferedSteel[];
  readonly unknown: Refusal[];
}

function listed(names: Column<Named>, prices: Column<number>): Listed {
  const result: Listed = { offered: [], unknown: [] };
  names.forEach((named, row) => {
    if (named === undefined) return;
    const price = isEmptyColumn(prices) ? undefined : besideRow(prices, row, names.length, "price kg");
    for (const steel of named.steels) {
      if (steel instanceof Refusal) result.unknown.push(steel);
      else result.offered.push({ steel, price });
    }
  });
  return result;
}

const rounded = (value: number | undefined) => (value === undefined ? "" : Math.round(value));
const twoFigures = (mm: number | undefined) => (mm === undefined ? "" : Number(mm.toPrecision(2)));

function rowOf({
  names,
  status,
  temperC,
  likely,
  chance,
  hardensMm,
  traits,
  price,
  why,
  givesUp,
}: Choice): Answer[] {
  return [
    names.join(", "),
    status,
    temperC ?? "",
    rounded(likely),
    shownChance(chance),
    twoFigures(hardensMm),
    traits.ratings?.toughness ?? "",
    traits.ratings?.wear ?? "",
    traits.rust,
    traits.need,
    price ?? "",
    why,
    givesUp,
  ];
}

/** A row without a steel that says something of the list: a name that is unknown, or that nothing fits. */
function saidRow(status: string, sentence: string): Answer[] {
  return ["", status, "", "", "", "", "", "", "", "", "", sentence, ""];
}

export const STEELS_FOR = tableFunction({
  name: "STEELS_FOR",
  takesLong: true,
  summary:
    "Steels for a use, with why and what each gives up, in order: usual or serves, in the band, sold widely, suitability, depth under clay, chance outside the brittle range, margin in the quench, named, ease, price; what cannot be last.",
  parameters: {
    use,
    thickness,
    quench,
    length: bladeLength,
    stainless: yesNo("stainless", "yes: it must be stainless; no: it must not; either where left out."),
    among,
    price: rangeParameter(
      numberOrNothing(money({ label: "price kg", help: "Price a kg beside each steel of the list." })),
    ),
    howMany: optionalNumber({
      label: "how many",
      quantity: "count",
      unit: "",
      min: 1,
      max: 400,
      whole: true,
      fallback: 8,
      help: "Rows to show.",
    }),
    kiln: yesNo(
      "kiln",
      "no: the shop has a forge only, and what wants a kiln above 900 °C (1652 °F) is ruled out.",
    ),
  },
  result: [
    { label: "steel", unit: "text" },
    { label: "status", unit: "text" },
    { label: "temper C", unit: "°C" },
    { label: "likely", unit: "HRC" },
    { label: "chance", unit: "" },
    { label: "hardens through", unit: "mm" },
    { label: "toughness", unit: "1-9" },
    { label: "edge holding", unit: "1-9" },
    { label: "rust", unit: "text" },
    { label: "ease", unit: "text" },
    { label: "price kg", unit: "" },
    { label: "why", unit: "text" },
    { label: "gives up", unit: "text" },
  ],
  relations: (steel) => [
    CHOICE_ORDER,
    STEEL_BY_USE,
    TOOL_STEEL_RATINGS,
    RATING_RELATION,
    MAX_PLATE,
    EMBRITTLEMENT,
    PASSIVITY,
    ...temperingRelations(steel),
  ],
  *compute({ among, price, howMany, ...question }) {
    const isWhole = isEmptyColumn(among);
    if (isWhole && !isEmptyColumn(price))
      throw new InvalidValue("price kg: prices given without steels; give both");
    const { offered, unknown } = listed(among, price);
    const choices = yield* steelsForInParts(question, isWhole ? undefined : offered);
    const lead = nothingFits(choices);
    const rows = [
      ...(lead === "" ? [] : [saidRow("ruled out", lead)]),
      ...choices.map(rowOf),
      ...unknown.map(({ message }) => saidRow("not known", message)),
    ].slice(0, howMany);
    if (rows.length === 0) throw new NotAvailable("no steel is left to choose from");
    return rows;
  },
});
