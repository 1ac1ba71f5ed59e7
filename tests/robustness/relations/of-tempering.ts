import {
  cell,
  column,
  conserved,
  type Draw,
  figure,
  figures,
  grows,
  invariant,
  inverse,
  monotone,
  number,
  rising,
  rows,
  times,
} from "./mechanism";

/** The scale of ASSESS ends here. */
const MOST_HRC = 68;

const temper = (draw: Draw) => draw.figure(160, 220, 5);
const blade = (draw: Draw) => ({
  use: draw.use(),
  steel: draw.plain(),
  thickness: draw.figure(2, 6, 0.5),
  quench: "fast oil",
});

/** Tempering, and what is said of a blade for a use. */
export const TEMPERING_RELATIONS = [
  inverse("SAME_TEMPER: to another time and back", "SAME_TEMPER", (draw) => {
    const [celsius, hours, newHours] = [draw.figure(150, 500, 5), draw.figure(1, 4), draw.figure(1, 8)];
    const there = figure("SAME_TEMPER", { celsius, hours, newHours });
    return [
      celsius,
      there === undefined
        ? undefined
        : figure("SAME_TEMPER", { celsius: there, hours: newHours, newHours: hours }),
      0.2,
    ];
  }),
  grows(
    "SAME_TEMPER",
    "newHours",
    (draw) => ({ celsius: draw.figure(150, 500), hours: 2, values: rising(draw, 0.5, 12) }),
    { falls: true },
  ),
  grows("SAME_TEMPER", "celsius", (draw) => ({
    hours: 2,
    newHours: draw.figure(1, 8),
    values: rising(draw, 150, 500),
  })),
  conserved("TEMPER_TIME_AT: one hold counts with its own time", "TEMPER_TIME_AT", (draw) => {
    const [celsius, hours] = [draw.figure(150, 400, 5), draw.figure(0.5, 6)];
    return [figure("TEMPER_TIME_AT", { tempers: celsius, hours, referenceC: celsius }), hours, 0.01];
  }),
  conserved("TEMPER_TIME_AT: two halves of a hold are the hold", "TEMPER_TIME_AT", (draw) => {
    const [celsius, hours, referenceC] = [
      draw.figure(180, 250, 5),
      draw.figure(1, 6),
      draw.figure(180, 250, 5),
    ];
    const at = (tempers: unknown, each: unknown) =>
      figure("TEMPER_TIME_AT", { tempers, hours: each, referenceC });
    return [at(celsius, hours), at(column([celsius, celsius]), column([hours / 2, hours / 2])), 0.01];
  }),
  invariant("TEMPER_TIME_AT does not ask which hold came first", "TEMPER_TIME_AT", (draw) => {
    const holds = [draw.figure(180, 220, 5), draw.figure(180, 220, 5)];
    const at = (all: readonly number[]) =>
      figure("TEMPER_TIME_AT", { tempers: column(all), hours: column([2, 2]), referenceC: 200 });
    return [at(holds), at([...holds].reverse()), 0.01];
  }),
  invariant("TEMPERED_HRC: two tempers of two hours are one of four", "TEMPERED_HRC", (draw) => {
    const [steel, temperC] = [draw.plain(), draw.figure(160, 400, 5)];
    return [
      figure("TEMPERED_HRC", { steel, temperC, hours: 2, cycles: 2 }),
      figure("TEMPERED_HRC", { steel, temperC, hours: 4 }),
    ];
  }),
  grows("TEMPERED_HRC", "temperC", (draw) => ({ steel: draw.plain(), values: rising(draw, 160, 420) }), {
    falls: true,
  }),
  grows(
    "TEMPERED_HRC",
    "hours",
    (draw) => ({ steel: draw.plain(), temperC: draw.figure(180, 380), values: rising(draw, 1, 8) }),
    { falls: true },
  ),
  invariant("TEMPERED_HRC goes through a known reading at its temper", "TEMPERED_HRC", (draw) => {
    const [steel, knownC] = [draw.plain(), draw.figure(180, 300, 5)];
    const knownHrc = figure("TEMPERED_HRC", { steel, temperC: knownC });
    const moved = knownHrc === undefined ? undefined : Number((knownHrc - 0.7).toFixed(1));
    return [moved, figure("TEMPERED_HRC", { steel, temperC: knownC, knownC, knownHrc: moved }), 0.06];
  }),
  monotone("TEMPERED_RANGE: low, likely, high", "TEMPERED_RANGE", (draw) =>
    figures("TEMPERED_RANGE", { steel: draw.steel(), temper: draw.figure(150, 550, 5) }).slice(0, 3),
  ),
  invariant("TEMPER_CURVE has the hardness of TEMPERED_HRC", "TEMPER_CURVE TEMPERED_HRC", (draw) => {
    const [steel, from] = [draw.plain(), draw.figure(160, 400, 5)];
    return [
      number(rows("TEMPER_CURVE", { steel, from, to: from, step: 5 })[0]?.[2]),
      figure("TEMPERED_HRC", { steel, temperC: from }),
      0.06,
    ];
  }),
  grows("TEMPER_FOR", "targetHrc", (draw) => ({ steel: draw.plain(), values: rising(draw, 50, 60, 0.5) }), {
    falls: true,
  }),
  inverse("TEMPERED_HRC of the temper of TEMPER_FOR", "TEMPER_FOR TEMPERED_HRC", (draw) => {
    const [steel, targetHrc] = [draw.plain(), draw.figure(50, 59, 0.5)];
    const isPlain = cell("TEMPER_PLAN", { steel, targetHrc }, 3) === "one answer";
    const temperC = isPlain ? figure("TEMPER_FOR", { steel, targetHrc }) : undefined;
    return [targetHrc, temperC === undefined ? undefined : figure("TEMPERED_HRC", { steel, temperC }), 0.06];
  }),
  monotone(
    "TEMPER_PLAN: begins no hotter than likely, likely no hotter than the hottest",
    "TEMPER_PLAN",
    (draw) =>
      figures("TEMPER_PLAN", { steel: draw.plain(), targetHrc: draw.figure(50, 60, 0.5) }).slice(0, 3),
  ),
  monotone("TEMPER_PLAN: 10 °C hotter is no harder than 10 °C cooler", "TEMPER_PLAN", (draw) => {
    const told = figures("TEMPER_PLAN", { steel: draw.plain(), targetHrc: draw.figure(50, 60, 0.5) });
    return [told[5], told[4]];
  }),
  inverse("OVEN_SET: a temper that was measured is set as it was", "OVEN_SET", (draw) => {
    const settings = [180, 220, 300];
    const measured = settings.map((set) => set + draw.figure(-12, 12, 1));
    const at = draw.figure(0, 2, 1);
    return [
      settings[at],
      figure("OVEN_SET", { temperC: measured[at], settings: column(settings), measured: column(measured) }),
      0.5,
    ];
  }),
  invariant("OVEN_SET does not ask which check came first", "OVEN_SET", (draw) => {
    const [settings, measured] = [
      [180, 240],
      [180 + draw.figure(-9, 9, 1), 240 + draw.figure(-9, 9, 1)],
    ];
    const set = (turned: (list: number[]) => number[]) =>
      figure("OVEN_SET", {
        temperC: 210,
        settings: column(turned([...settings])),
        measured: column(turned([...measured])),
      });
    return [set((list) => list), set((list) => list.reverse())];
  }),
  grows("OVEN_SET", "temperC", (draw) => ({
    settings: column([180, 300]),
    measured: column([175, 309]),
    values: rising(draw, 180, 300),
  })),
  invariant("TEMPER_FIT does not ask which coupon came first", "TEMPER_FIT", (draw) => {
    const [tempers, readings] = [
      [200, 240],
      [draw.figure(58, 61, 0.1), draw.figure(56, 58, 0.1)],
    ];
    const fitted = (turned: (list: number[]) => number[]) =>
      figures("TEMPER_FIT", {
        steel: "1084",
        tempers: column(turned([...tempers])),
        readings: column(turned([...readings])),
        atC: 220,
      });
    return [fitted((list) => list), fitted((list) => list.reverse())];
  }),
  monotone("RETEMPER never goes back to a cooler temper", "RETEMPER", (draw) => {
    const soFarC = temper(draw);
    const steel = draw.oneOf(["1084", "5160", "1095"]);
    const reading = figure("TEMPERED_HRC", { steel, temperC: soFarC });
    const target = reading === undefined ? undefined : Math.round(reading) - 2;
    return [soFarC, figure("RETEMPER", { steel, soFarC, soFarHours: 2, reading, targetHrc: target })];
  }),

  monotone("BAND: low, aim, high", "BAND", (draw) => figures("BAND", { use: draw.use() }).slice(0, 3)),
  invariant("BAND names the use as USES lists it", "BAND USES", (draw) => {
    const use = draw.oneOf(rows("USES", {}))[0];
    return [figure("BAND", { use }), figure("BAND", { use: String(use).toUpperCase() })];
  }),
  monotone("BAND_TEMPER: low, likely, high", "BAND_TEMPER", (draw) =>
    figures("BAND_TEMPER", blade(draw)).slice(2, 5),
  ),
  invariant("BAND_TEMPER: its temper in both scales", "BAND_TEMPER", (draw) => {
    const [c, f] = figures("BAND_TEMPER", blade(draw));
    return [f, c === undefined ? undefined : Math.round(c * 1.8 + 32), 1];
  }),
  invariant("BAND_TEMPER is the temper of TREATMENT", "BAND_TEMPER TREATMENT", (draw) => {
    const asked = blade(draw);
    return [
      figure("BAND_TEMPER", { ...asked, cycles: 2 }),
      figure("TREATMENT", { ...asked, temperCycles: 2 }, 4),
      1,
    ];
  }),
  monotone("BAND_TEMPER: a chance lies between 0 and 1", "BAND_TEMPER", (draw) => [
    0,
    figure("BAND_TEMPER", blade(draw), 5),
    1,
  ]),
  invariant(
    "BAND_TEMPER tells the hardness that TEMPERED_RANGE tells of its temper",
    "BAND_TEMPER TEMPERED_RANGE",
    (draw) => {
      const { steel, use } = blade(draw);
      const [temperC, , , likely] = figures("BAND_TEMPER", { steel, use });
      return [likely, temperC === undefined ? undefined : figure("TEMPERED_HRC", { steel, temperC }), 0.8];
    },
  ),
  invariant(
    "STEELS_FOR asked for one steel has the chance of BAND_TEMPER",
    "STEELS_FOR BAND_TEMPER",
    (draw) => {
      const { steel, ...asked } = blade(draw);
      const [row] = rows("STEELS_FOR", { ...asked, among: steel, howMany: 1 });
      return [number(row?.[4]), figure("BAND_TEMPER", { steel, ...asked }, 5), 0.011];
    },
  ),
  invariant("STEELS_FOR asked for one steel has its temper", "STEELS_FOR BAND_TEMPER", (draw) => {
    const { steel, ...asked } = blade(draw);
    const [row] = rows("STEELS_FOR", { ...asked, among: steel, howMany: 1 });
    return [number(row?.[2]), figure("BAND_TEMPER", { steel, ...asked })];
  }),
  invariant("STEELS_FOR does not ask in which order steels were named", "STEELS_FOR", (draw) => {
    const asked = { use: draw.use(), thickness: 3, quench: "fast oil" };
    const named = ["5160", "1095", "52100"];
    const order = (among: readonly string[]) =>
      rows("STEELS_FOR", { ...asked, among: column(among) }).map(([steel]) => steel);
    return [order(named), order([...named].reverse())];
  }),
  monotone("STEELS_FOR gives more rows where more are asked for", "STEELS_FOR", (draw) => {
    const use = draw.use();
    return [2, 5].map((howMany) => rows("STEELS_FOR", { use, howMany }).length);
  }),
  invariant("ASSESS of the whole band as a reading is inside it", "ASSESS BAND", (draw) => {
    const use = draw.use();
    const [low, , high] = figures("BAND", { use });
    const middle = low === undefined || high === undefined ? undefined : (low + high) / 2;
    const status = cell("ASSESS", { use, steel: "1084", low: middle, high: middle });
    return [typeof status === "string" && /^(inside|likely inside|uncertain)/.test(status), true];
  }),
  invariant("ASSESS: 5 HRC over the band is too hard, 5 under it too soft", "ASSESS BAND", (draw) => {
    const use = draw.use();
    const [low = 0, , high = 0] = figures("BAND", { use });
    const at = (hrc: number) =>
      hrc > MOST_HRC ? undefined : cell("ASSESS", { use, steel: "1084", low: hrc, high: hrc });
    return [
      [at(high + 5), at(low - 5)],
      ["too hard", "too soft"],
    ];
  }),
  invariant("ASSESS does not mind which end of the readings is given first in °C or °F", "ASSESS", (draw) => {
    const asked = { use: draw.use(), steel: draw.plain() };
    const temperC = draw.figure(180, 240, 5);
    return [
      cell("ASSESS", { ...asked, temper: temperC }),
      cell("ASSESS", { ...asked, temper: `${temperC * 1.8 + 32} F` }),
    ];
  }),
  monotone("TRADE_OFF: a harder edge is tempered cooler", "TRADE_OFF", (draw) => {
    const hrc = column([60, 58, 56]);
    return rows("TRADE_OFF", { use: draw.use(), steel: draw.oneOf(["1084", "1095"]), hrc }).map((row) =>
      number(row[1]),
    );
  }),
  invariant("TREATMENT keeps a temper that was chosen", "TREATMENT", (draw) => {
    const chosenC = draw.figure(180, 300, 5);
    return [figure("TREATMENT", { steel: draw.plain(), use: draw.use(), chosenC }, 4), chosenC, 1];
  }),
  monotone("TREATMENT: low hardness is under high", "TREATMENT", (draw) =>
    figures("TREATMENT", blade(draw)).slice(6, 8),
  ),
  invariant("RECIPE is the recipe of TREATMENT where no use decides", "RECIPE TREATMENT", (draw) => {
    const asked = { steel: draw.plain(), target: draw.figure(54, 60, 1) };
    return [cell("RECIPE", asked), cell("TREATMENT", asked, 17)];
  }),
  invariant("TEMPER_PLAN reads minutes as hours", "TEMPER_PLAN", (draw) => {
    const [steel, targetHrc] = [draw.plain(), draw.figure(52, 60, 0.5)];
    return [
      figures("TEMPER_PLAN", { steel, targetHrc, hours: 2 }).slice(0, 3),
      figures("TEMPER_PLAN", { steel, targetHrc, hours: "120 min" }).slice(0, 3),
    ];
  }),
  invariant("OXIDE_COLOUR reads °F as °C", "OXIDE_COLOUR", (draw) => {
    const celsius = draw.figure(205, 325, 5);
    return [
      cell("OXIDE_COLOUR", { celsius }),
      cell("OXIDE_COLOUR", { celsius: `${(times(celsius, 1.8) as number) + 32} F` }),
    ];
  }),
];
