import { code, escaped, type HelpPage, table } from "./html";
import { answerOf, workedCall } from "./worked-call";

/** The chef knife of the invented run R-07, line L1. */
const STEEL = "52100";
const STATIONS = { x: [0, 70, 140, 210], width: [48, 44, 32, 6], thickness: [2.4, 2.2, 1.8, 1.2] } as const;

const HEAT = {
  elements: ["C", "Si", "Mn", "P", "S", "Cr"],
  figures: [1.01, 0.24, 0.34, 0.012, 0.006, 1.45],
} as const;

/** Two lines of the run, and what two invented suppliers answered for them. */
const OFFERS = {
  need: [
    ["steel", "section", "length", "quantity"],
    [STEEL, "50 x 3", 346, 28],
    ["1075", "60 x 2.5", 611, 14],
  ],
  offers: [
    ["supplier", "steel", "section", "price", "per", "bar length", "minimum charge", "freight", "week"],
    ["Brackwater Steel Yard", STEEL, "50 x 3", 8.4, "kg", 3000, 90, 24, "2026-W40"],
    ["Brackwater Steel Yard", "1075", "60 x 2.5", 6.2, "kg", "2000; 3000", null, null, "2026-W41"],
    ["Old Quay Metals", STEEL, "50 x 3", 33, "bar", 3000, 60, 18, "2026-W39"],
    ["Old Quay Metals", "1075", "60 x 2.5", 7.1, "m", 4000, null, null, "2026-W39"],
  ],
} as const;

/** What became of the orders of R-07; the tests send and collect them and hold these counts. */
const ROUND_TRIP = {
  out: 194,
  answered: 37,
  taken: 24,
  doubted: 5,
  doubts:
    "two prices far from the last ones, a price for a bar, a content given as a limit, a piece above its band",
  rows: [
    ["L4, steel", "heat Q4-7731, Mn 0.72 %, P 0.011", "Steel and heats, row of S4"],
    ["L5, hardening", "734 °F as run", "390 °C, which Lots received holds already"],
    ["L5, first piece", "49; 48,9; 49.2 HRC", "Hardness readings, blade R-07-L5-02"],
  ],
} as const;

/** A lot that came back hardened (invented); the test of what came fills a plan with the same. */
export const LOT = {
  sent: 7,
  good: 6,
  temper: 370,
  low: 50,
  high: 54,
  /** Mean of each blade that was read. */
  readings: [52.1, 52.4, 51.8, 52.6, 52.1],
  mean: 52.2,
} as const;

const stationArguments = [STATIONS.x, STATIONS.width, STATIONS.thickness, "flat", 0.2, STEEL] as const;

/** Stations of the guide with the balance that STATIONS gives, for the drawing. */
export function guideStations() {
  const [row] = answerOf("STATIONS", stationArguments);
  return { x: STATIONS.x, width: STATIONS.width, balance: Number(row?.[2]) };
}

export const GUIDE_STEEL = STEEL;

interface Step {
  readonly title: string;
  readonly says: string;
  readonly shows: string;
}

function figure(file: string, caption: string): string {
  return `<figure><img src="${file}" alt="${escaped(caption)}"><figcaption>${escaped(caption)}</figcaption></figure>`;
}

/** Commands as they are typed, a line each. */
const commands = (...lines: readonly string[]) =>
  lines.map((line) => `<p class="call">${code(line)}</p>`).join("\n");

function steps(): readonly Step[] {
  return [
    {
      title: "The enquiry: what is it for, and how hard should it be",
      says: "A customer asks for 24 thin chef knives, 210 mm, in nine weeks. The band of hardness that suits the use comes first, with its basis and the side to err on.",
      shows: workedCall("BAND", ["Chef knife thin hard"]),
    },
    {
      title: "The steel: does the certificate fit the grade",
      says: "The bars in stock came with a certificate. Each figure is held against the limits of the grade; what is missing is named, not passed over.",
      shows: workedCall("CERTIFICATE", [STEEL, HEAT.elements, HEAT.figures]),
    },
    {
      title: "Hardening and tempering",
      says: "How the grade is hardened, then the temper for 60 HRC. The plan starts cooler than the likely temper, because a blade that is too soft must be hardened again while one that is too hard is only tempered once more. Mind the caution on the embrittlement range.",
      shows: [
        workedCall("HARDENING", [STEEL]),
        workedCall("TEMPER_PLAN", [STEEL, 60]),
        figure(
          "temper-curve.svg",
          `${STEEL}: likely hardness after a 2 h temper, with the band that holds 9 cases in 10`,
        ),
      ].join("\n"),
    },
    {
      title: "The blade: what it weighs and where it balances",
      says: "Width and thickness measured at four stations from the heel. Both taper, so length × width × thickness would be far off.",
      shows: [
        workedCall("STATIONS", stationArguments),
        figure("profile.svg", "The profile from the same stations, to scale, with the balance point"),
      ].join("\n"),
    },
    {
      title: "How many to start, and what bar to buy",
      says: "At a yield of 92 in 100, dividing 24 by 0.92 would leave one chance in six of coming out short. The starts below give 9 chances in 10 or better; the blanks are 346 mm long with the tang.",
      shows: [workedCall("STARTS", [24, 0.92]), workedCall("CUT_PLAN", [[346], [28], 3000])].join("\n"),
    },
    {
      title: "Where to test it",
      says: "A reading on a thin edge is worthless. The least thickness for 60 HRC decides where the tester may press; then how many blades to sample, and what three readings of one blade say.",
      shows: [
        workedCall("TEST_THICKNESS", [60]),
        workedCall("SAMPLE_PLAN", [24, 2.5]),
        workedCall("READINGS", [[[60.1, 60.4, 60.2]], 59, 62]),
      ].join("\n"),
    },
    {
      title: "The price",
      says: "The cost of the lot comes from your own sheet of hours and rates, or from RUN_PLAN in one call. The price here keeps 35 parts in 100 of itself as margin; a markup of 35 on the cost would be another, lower, price.",
      shows: [
        workedCall("PRICE_AT_MARGIN", [193.62, 0.35]),
        workedCall("PRICE_AT_MARKUP", [193.62, 0.35]),
      ].join("\n"),
    },
    {
      title: "The copy that leaves the shop",
      says: "A supplier or a heat treater has no add-in: a live workbook would show them #NAME? after one recalculation. Make a share copy, from the pane's page Share and repair or with npm run share. You say for whom it is and see all that travels; it holds values only, and a sheet that says what computed them. A copy for a supplier, a heat treater or a customer also has a table with shaded cells for the answer, the only ones that are not locked. A supplier whom the plan does not buy from gets an enquiry about all lines.",
      shows: commands(
        'npm run -s share -- --for supplier "Old Quay Metals" --by 2026-09-25 -o quay.xlsx "run R-07.xlsx"',
        'npm run -s share -- --for supplier "Grey Heron Steel" --lines L1,L5 -o heron.xlsx "run R-07.xlsx"',
      ).concat(
        "\n",
        figure("share-copy.png", "Share copy asks for whom the copy is before it lists all that travels"),
      ),
    },
    {
      title: "The answers come home",
      says: `The orders of R-07 went to two steel suppliers and a heat treater: ${ROUND_TRIP.out} cells went out, ${ROUND_TRIP.answered} were filled in. Bring answers in, in the workbench and in the pane, or the command collect reads them from the file as it came back, its CSV or a pasted table, and shows each beside what the plan holds. ${ROUND_TRIP.taken} were fine and taken, each with a line on the sheet Answers; ${ROUND_TRIP.doubted} were left to look at: ${ROUND_TRIP.doubts}. Brought in once more, none is taken twice.`,
      shows: [
        figure(
          "answered-order.png",
          "The order as Old Quay Metals sent it back: only the shaded cells could be filled in",
        ),
        figure(
          "answers-in.png",
          "Bring answers in: each answer beside what the plan holds; what is doubtful is not ticked",
        ),
        commands('npm run -s collect -- --accept "run R-07.xlsx" brackwater.xlsx quay.xlsx salt-lane.xlsx'),
        table("What some of the answers became", ["line", "as answered", "in the plan"], ROUND_TRIP.rows),
        figure("plan-after.png", "The plan after: prices, heat numbers and analyses on Steel and heats"),
      ].join("\n"),
    },
    {
      title: "Offers come back: the cheapest mix",
      says: "Two suppliers answered. Their prices count kilograms, bars and metres; each has a minimum charge and freight. In the planning workbook the answers stand on the sheet Offers, and Best offer shows the mix and all offers side by side. Both sheets are private: no copy that goes out has them.",
      shows: [
        workedCall("BEST_OFFER", [OFFERS.need, OFFERS.offers]),
        figure(
          "offers.png",
          "Best offer in the plan: the cheapest mix, and below it all offers side by side",
        ),
      ].join("\n"),
    },
    {
      title: "What came: a hardened lot",
      says: "Seven blades went to a heat treater, who ran 370 °C for 2 h; all came back, five were read. On the sheet Lots received the readings are held against the band and the sample, and the lot is the coupon for the next run of that steel: known temper and known hardness. Once the blades are sent, what was begun and what came out good stands on Past lots, for the next quote.",
      shows: [
        workedCall("READINGS", [[LOT.readings], LOT.low, LOT.high]),
        workedCall("SAMPLE_PLAN", [LOT.sent, 2.5, "S-2"]),
        workedCall("TEMPER_FIT", ["5160", [[LOT.temper]], [[LOT.mean]]]),
        workedCall("HISTORY", [
          [
            ["item", "started", "good"],
            ["Arming sword", 8, 7],
            ["Arming sword", LOT.sent, LOT.good],
          ],
        ]),
      ].join("\n"),
    },
  ];
}

/** From enquiry to the copy that is sent and what comes back, each figure worked out when the pages were made. */
export function guidePage(): HelpPage {
  const parts = steps().map(
    ({ title, says, shows }, at) =>
      `<h2>${at + 1}. ${escaped(title)}</h2>\n<p>${escaped(says)}</p>\n${shows}`,
  );
  const lead = `<p class="lead">One line of an invented run, R-07 of Tern Hollow Forge, from enquiry to what comes back. Every answer below was worked out by the functions when this page was made.</p>`;
  return {
    file: "guide.html",
    title: "A run from enquiry to share copy and back",
    body: [lead, ...parts].join("\n"),
  };
}
