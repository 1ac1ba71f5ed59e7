/** Functions that are not asked about the blades, each with its reason. What they hold to stands in `relations`. */
const REASONS: Readonly<Record<string, readonly string[]>> = {
  "a list of words or headings, the same for every blade": [
    ..."USES QUENCHES GRINDS SCALES STEELS RUN_HEADINGS VERSION".split(" "),
  ],
  "tells where the figures of a function come from, no figure of a blade": ["EVIDENCE"],
  "reads a text or turns a unit, whatever it measures": [..."LENGTH FRACTION READ_HARDNESS".split(" ")],
  "turns a reading of one scale into another, whatever was read": ["HARDNESS"],
  "composes or takes apart the name of a steel, before there is a blade": [..."ANALYSIS DECODE".split(" ")],
  "speaks of a billet or a weld of two steels, before there is a blade": [
    ..."BILLET_CARBON EVEN_OUT CLADDING".split(" "),
  ],
  "speaks of temper and time alone, whatever the steel": [
    ..."SAME_TEMPER TEMPER_TIME_AT OXIDE_COLOUR OVEN_SET".split(" "),
  ],
  "speaks of readings, lots and samples, whatever was made": [
    ..."READINGS SAMPLE_PLAN ACCEPT_CHANCE YIELD_FLOOR TEST_THICKNESS".split(" "),
  ],
  "speaks of money, whatever was made": [
    ..."COST_RANGE LOT_COST OUTSIDE_CHARGE PRICE_AT_MARGIN PRICE_AT_MARKUP PRICE_BREAKS ROUND_MONEY".split(
      " ",
    ),
    ..."STARTS_BY_PROFIT".split(" "),
  ],
  "speaks of orders, offers and hours of a shop, not of one blade": [
    ..."BEST_OFFER OFFERS_COMPARED STEEL_ORDER HISTORY RUN_TOTALS LEARNING FURNACE".split(" "),
  ],
  "speaks of one angle, wheel, groove or bevel, of which a blade drawn here has none": [
    ..."EDGE_ANGLE EDGE_BEVEL GRIND_ANGLE HOLLOW_DEPTH WHEEL FULLERED_AREA FULLER_WIDTH FORGE_LENGTH".split(
      " ",
    ),
  ],
  "speaks of masses that are put together, weighed or swung, whatever their shape": [
    ..."ASSEMBLY EFFECTIVE_MASS PERCUSSION_CENTRE POMMEL SWING_INERTIA".split(" "),
  ],
};

/** The reason by the name of the function. */
export const NOT_OF_A_BLADE: Readonly<Record<string, string>> = Object.fromEntries(
  Object.entries(REASONS).flatMap(([reason, names]) => names.map((name) => [name, reason])),
);
