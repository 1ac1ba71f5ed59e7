import { InvalidValue } from "../../../src/core/refusal";
import {
  cell,
  column,
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

const BATHS = ["slow oil", "fast oil"] as const;
const CARBON = (draw: { figure: (low: number, high: number, step?: number) => number }) =>
  draw.figure(0.5, 1, 0.01);

/** Steels, their hardening and their hardness. */
export const STEEL_RELATIONS = [
  invariant("DENSITY does not depend on the order of an analysis", "DENSITY", (draw) => {
    const [c, mn] = [draw.figure(0.4, 1, 0.01), draw.figure(0.3, 1.2, 0.01)];
    return [figure("DENSITY", { steel: `C ${c} Mn ${mn}` }), figure("DENSITY", { steel: `Mn ${mn} C ${c}` })];
  }),
  invariant("CARBON is the carbon of COMPOSITION", "CARBON COMPOSITION", (draw) => {
    const steel = draw.steel();
    const bound = draw.oneOf(["low", "high"]);
    return [figure("CARBON", { steel, bound }), figure("COMPOSITION", { steel, element: "C", bound })];
  }),
  monotone("CARBON: low, nominal, high", "CARBON", (draw) => {
    const steel = draw.steel();
    return ["low", "nominal", "high"].map((bound) => figure("CARBON", { steel, bound }));
  }),
  monotone("COMPOSITION: low, typical, high", "COMPOSITION", (draw) => {
    const [steel, element] = [draw.steel(), draw.oneOf(["C", "Mn", "Si"])];
    return ["low", "typical", "high"].map((bound) => figure("COMPOSITION", { steel, element, bound }));
  }),
  invariant("ANALYSIS gives the carbon that went in", "ANALYSIS CARBON", (draw) => {
    const c = CARBON(draw);
    const steel = cell("ANALYSIS", { elements: column(["Mn", "C"]), values: column([0.5, c]) });
    return [steel === undefined ? undefined : figure("CARBON", { steel }), c];
  }),
  invariant("BILLET_CARBON of layers of one steel is its carbon", "BILLET_CARBON", (draw) => {
    const c = CARBON(draw);
    return [figure("BILLET_CARBON", { carbon: column([c, c]), share: column([3, 1]) }), c, 0.005];
  }),
  invariant("BILLET_CARBON goes by the ratio of the shares", "BILLET_CARBON", (draw) => {
    const [carbon, share] = [column([0.95, 0.75]), [draw.figure(1, 5), draw.figure(1, 5)]];
    const of = (factor: number) =>
      figure("BILLET_CARBON", { carbon, share: column(share.map((one) => one * factor)) });
    return [of(1), of(3)];
  }),
  monotone("BILLET_CARBON rises with the carbon of a layer", "BILLET_CARBON", (draw) =>
    rising(draw, 0.4, 1).map((c) =>
      figure("BILLET_CARBON", { carbon: column([c, 0.6]), share: column([2, 1]) }),
    ),
  ),
  grows("EVEN_OUT", "layerMm", (draw) => ({
    celsius: draw.figure(900, 1200),
    values: rising(draw, 0.05, 3),
  })),
  grows(
    "EVEN_OUT",
    "celsius",
    (draw) => ({ layerMm: draw.figure(0.1, 2), values: rising(draw, 850, 1200) }),
    {
      falls: true,
    },
  ),
  invariant("EVEN_OUT takes four times as long for twice the layer", "EVEN_OUT", (draw) => {
    const [layerMm, celsius] = [draw.figure(0.1, 1), draw.figure(900, 1200)];
    return [
      figure("EVEN_OUT", { layerMm: 2 * layerMm, celsius }),
      times(figure("EVEN_OUT", { layerMm, celsius }), 4),
    ];
  }),
  grows("CLADDING", "minutes", (draw) => ({
    ...{ core: "1095", clad: "1018", layer: 3, celsius: draw.figure(950, 1150) },
    values: rising(draw, 1, 120),
  })),
  grows("CLADDING", "celsius", (draw) => ({
    ...{ core: "1095", clad: "1018", layer: 3, minutes: draw.figure(1, 60) },
    values: rising(draw, 900, 1200),
  })),
  invariant("STEELS of a family are of that family", "STEELS STEEL", (draw) => {
    const family = draw.oneOf(["plain carbon", "cold work", "martensitic stainless"]);
    const found = draw.oneOf(rows("STEELS", { family }))[0];
    return [cell("STEEL", { steel: found }, 5), family];
  }),
  invariant("NEAREST_GRADES never names the steel itself", "NEAREST_GRADES", (draw) => {
    const steel = draw.steel();
    return [rows("NEAREST_GRADES", { steel }).some(([name]) => name === steel), false];
  }),
  invariant("DECODE reads the carbon of a four-digit number", "DECODE", (draw) => {
    const points = draw.figure(10, 95, 5);
    const found = rows("DECODE", { designation: `10${points}` }).find(([element]) => element === "C")?.[1];
    return [typeof found === "number" ? found : Number(found), points / 100];
  }),
  grows(
    "STAINLESS",
    "hardenC",
    (draw) => ({ steel: draw.oneOf(["440C", "420", "440A"]), values: rising(draw, 1010, 1060) }),
    {
      column: 1,
    },
  ),

  grows("DECARB", "minutes", (draw) => ({
    steel: draw.plain(),
    celsius: draw.figure(850, 1100),
    values: rising(draw, 2, 120),
  })),
  grows("DECARB", "celsius", (draw) => ({
    steel: "1095",
    minutes: draw.figure(5, 60),
    values: rising(draw, 920, 1150),
  })),
  invariant("DECARB goes with the square root of time", "DECARB", (draw) => {
    const [steel, celsius, minutes] = [draw.plain(), draw.figure(920, 1100), draw.figure(5, 30)];
    const depth = (factor: number) => figure("DECARB", { steel, celsius, minutes: factor * minutes });
    // Depths are told in hundredths of a millimetre.
    return [depth(4), times(depth(1), 2), 0.021];
  }),
  grows("GRIND_ALLOWANCE", "heats", (draw) => ({
    ...{ steel: draw.plain(), celsius: 900, minutes: draw.figure(5, 30) },
    values: [1, 2, draw.figure(3, 9, 1)],
  })),
  grows("GRIND_ALLOWANCE", "minutes", (draw) => ({
    steel: draw.plain(),
    celsius: 900,
    values: rising(draw, 2, 90),
  })),
  grows("HARDENABILITY", "grain", (draw) => ({ steel: draw.plain(), values: rising(draw, 4, 9) }), {
    falls: true,
  }),
  grows(
    "JOMINY",
    "distance",
    (draw) => ({ steel: draw.oneOf(["5160", "6150", "1045", "4140"]), values: rising(draw, 2, 40) }),
    {
      falls: true,
    },
  ),
  monotone("MAX_SECTION: fully hard is thinner than half martensite", "MAX_SECTION", (draw) =>
    figures("MAX_SECTION", { steel: draw.plain(), quench: draw.quench() }).slice(0, 2),
  ),
  monotone("MAX_SECTION: a faster oil hardens thicker", "MAX_SECTION", (draw) => {
    const steel = draw.plain();
    return BATHS.map((quench) => figure("MAX_SECTION", { steel, quench }));
  }),
  grows("RETAINED", "quenchToC", (draw) => ({
    steel: draw.plain(),
    hardenC: 820,
    values: rising(draw, -80, 60),
  })),
  grows("RETAINED", "hardenC", (draw) => ({
    steel: draw.oneOf(["52100", "1095"]),
    values: rising(draw, 800, 900),
  })),
  grows("DISSOLVED", "hardenC", (draw) => ({
    steel: draw.oneOf(["1095", "52100", "W1-10"]),
    values: rising(draw, 770, 900),
  })),
  grows(
    "SOAK",
    "thickness",
    (draw) => ({ furnaceC: draw.figure(780, 1050), values: rising(draw, 0.5, 15) }),
    {
      column: 2,
    },
  ),
  monotone("CRITICAL: Ac1 lies under the upper critical temperature", "CRITICAL", (draw) =>
    figures("CRITICAL", { steel: draw.plain() }).slice(0, 2),
  ),
  monotone("HARDENING: each low end lies under its high end", "HARDENING", (draw) =>
    figures("HARDENING", { steel: draw.steel() }).slice(3, 5),
  ),
  monotone("QUENCHED_HRC: what is tempered is no harder", "QUENCHED_HRC TEMPERED_HRC", (draw) => {
    const steel = draw.plain();
    return [
      figure("TEMPERED_HRC", { steel, temperC: draw.figure(150, 400, 5) }),
      figure("QUENCHED_HRC", { steel }),
    ];
  }),
  monotone(
    "SECTION_QUENCH: the thin edge is at least as hard as the spine",
    "SECTION_QUENCH",
    (draw) => {
      const [, edge, , spine] = figures("SECTION_QUENCH", {
        ...{
          steel: draw.oneOf(["1075", "1095"]),
          width: draw.figure(24, 36, 1),
          spine: draw.figure(4, 8, 0.5),
        },
        ...{ edge: 1.5, quench: draw.oneOf(["agitated water", "fast oil"]) },
      });
      return [spine, edge];
    },
    1,
  ),
  monotone("SECTION_QUENCH hardens no deeper under thicker clay", "SECTION_QUENCH", (draw) => {
    const blade = {
      steel: "1095",
      width: draw.figure(26, 34, 1),
      spine: 7,
      edge: 1.5,
      quench: "agitated water",
      clayLine: 12,
    };
    return [0.002, 0.0005].map((clay) => figure("SECTION_QUENCH", { ...blade, clay }));
  }),
  monotone("SECTION_PROFILE: low, likely, high at every place", "SECTION_PROFILE", (draw) => {
    const found = rows("SECTION_PROFILE", {
      steel: "1095",
      width: draw.figure(26, 34, 1),
      spine: 5,
      edge: 1.5,
      quench: "fast oil",
    });
    return draw.oneOf(found).slice(1, 4).map(number);
  }),
  inverse(
    "SECTION_FIT finds the clay of the depth that SECTION_QUENCH gave",
    "SECTION_FIT SECTION_QUENCH",
    (draw) => {
      const blade = {
        steel: "1095",
        width: 30,
        spine: 7,
        edge: 1.5,
        quench: "agitated water",
        clayLine: 12,
        below: 0.0002,
      };
      const measured = draw.figure(8, 11, 0.5);
      const clay = figure("SECTION_FIT", { ...blade, clay: 0.001, transfer: 1, measured });
      return [
        measured,
        clay === undefined ? undefined : figure("SECTION_QUENCH", { ...blade, clay, transfer: 1 }),
        0.6,
      ];
    },
  ),

  inverse("HARDNESS: HRC to HV and back", "HARDNESS", (draw) => {
    const value = draw.figure(21, 66, 0.1);
    const hv = figure("HARDNESS", { value, from: "HRC", to: "HV" });
    return [
      value,
      hv === undefined ? undefined : figure("HARDNESS", { value: hv, from: "HV", to: "HRC" }),
      0.1,
    ];
  }),
  grows("HARDNESS", "value", (draw) => ({
    from: "HRC",
    to: draw.oneOf(["HV", "HRA"]),
    values: rising(draw, 21, 66),
  })),
  grows("STRENGTH", "value", (draw) => ({ values: rising(draw, 25, 58) }), { column: 1 }),
  monotone("STRENGTH: yield is under tensile", "STRENGTH", (draw) =>
    figures("STRENGTH", { value: draw.figure(25, 58) }).slice(0, 2),
  ),
  invariant("READ_HARDNESS reads a hyphen, a dash and the word", "READ_HARDNESS", (draw) => {
    const low = draw.figure(40, 60, 1);
    const read = (text: string) =>
      figures("READ_HARDNESS", { band: text }).filter((one) => one !== undefined);
    return [read(`${low}-${low + 2} HRC`), read(`${low} to ${low + 2} HRC`)];
  }),
  monotone("READ_HARDNESS: low, aim, high", "READ_HARDNESS", (draw) =>
    figures("READ_HARDNESS", { band: `${draw.figure(40, 60, 1)} +2/-1` }),
  ),
  grows("TEST_THICKNESS", "hrc", (draw) => ({ values: rising(draw, 25, 65) }), { falls: true }),
  invariant("SCALES: each scale is itself", "SCALES HARDNESS", (draw) => {
    const scale = draw.oneOf(["HRC", "HV", "HRA"]);
    const value = draw.figure(60, 65, 0.1);
    const isListed = rows("SCALES", {}).some(([word]) => word === scale);
    return [
      isListed ? figure("HARDNESS", { value, from: scale, to: scale }) : undefined,
      scale === "HV" ? undefined : value,
      0.01,
    ];
  }),
  invariant("QUENCHES: every word is a quench that MAX_SECTION knows", "QUENCHES MAX_SECTION", (draw) => {
    const quench = draw.oneOf(rows("QUENCHES", {}))[0];
    const [row = []] = rows("MAX_SECTION", { steel: "5160", quench });
    return [row.some((one) => one instanceof InvalidValue), false];
  }),
  monotone("STEEL_TRAITS: toughness and wear lie between 1 and 9", "STEEL_TRAITS", (draw) => {
    const [, toughness, wear] = figures("STEEL_TRAITS", { steel: draw.plain() });
    const traits = [toughness, wear].filter((one) => one !== undefined);
    return traits.length === 0 ? [] : [1, Math.min(...traits), Math.max(...traits), 9];
  }),
  invariant("CERTIFICATE passes the middle of what COMPOSITION allows", "CERTIFICATE COMPOSITION", (draw) => {
    const steel = draw.oneOf(["1084", "1095", "5160"]);
    const elements = ["C", "Mn"];
    const values = elements.map((element) => figure("COMPOSITION", { steel, element, bound: "typical" }));
    const found = rows("CERTIFICATE", { steel, elements: column(elements), values: column(values) });
    const told = elements.map((element) => found.find(([symbol]) => symbol === element)?.[4]);
    return [told.some((status) => status === "HIGH" || status === "LOW"), false];
  }),
  invariant("EVIDENCE of a function does not ask for capitals", "EVIDENCE", (draw) => {
    const fn = draw.oneOf(["MASS", "TEMPER_FOR", "STARTS", "HARDNESS"]);
    const of = (name: string) => rows("EVIDENCE", { fn: name }).map(([title]) => title);
    return [of(fn), of(fn.toLowerCase())];
  }),
];
