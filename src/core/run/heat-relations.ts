import { relation } from "../relation";

/** Heat that steel takes up. */
export const STEEL_HEAT = relation({
  title: "Heat content of steel",
  source: "en-1993-1-2",
  locator: "specific heat of carbon steel, integrated",
  evidence: "standard",
  inputs: { temperature: { label: "temperature", unit: "°C", min: 20, max: 1200 } },
  output: { label: "heat", unit: "kJ/kg" },
  error: {
    size: null,
    unit: "kJ/kg",
    kind: "no error stated; written for structural steel in a fire, an estimate for blade steels",
  },
  note:
    "Includes the heat of the change to austenite around 735 °C (1355 °F), which a constant specific heat leaves " +
    "out: 0.46 kJ/(kg K) would give a third less at 845 °C (1553 °F).",
});

/** Energy for a furnace load. */
export const FURNACE_ENERGY = relation({
  title: "Energy for a furnace load",
  source: "common",
  locator: "heat content of load and fixture ÷ efficiency, plus holding power × time",
  evidence: "common practice",
  inputs: { efficiency: { label: "efficiency", unit: "", min: 0, max: 1 } },
  output: { label: "energy", unit: "kWh" },
  error: { size: null, unit: "kWh", kind: "as good as the efficiency: meter a load and work it out" },
  note:
    "A small brick furnace heated from cold for a few kg reaches 0.05 to 0.25, a loaded production furnace 0.3 to " +
    "0.6, a gas forge 0.05 to 0.15 (common practice, no source); vendors print more.",
});

/** Rise of quench oil. */
export const OIL_HEAT = relation({
  title: "Temperature rise of quench oil",
  source: "oil-one-to-one",
  locator: "heat given off by the steel ÷ (litres × density × specific heat)",
  evidence: "standard",
  inputs: { temperature: { label: "temperature", unit: "°C", min: 20, max: 1200 } },
  output: { label: "rise", unit: "K" },
  error: {
    size: null,
    unit: "K",
    kind: "no error stated; heat lost to the tank and the air is left out, so the rise is rather high",
  },
  note:
    "Usual oil 0.87 kg/L and 2.0 kJ/(kg K) (common practice, no source). The trade's rule of one US gallon a pound, " +
    "8.3 litres a kg, gives a rise of about 38 °C as a difference (70 °F).",
});

/** Distance to keep from the flash point. */
export const FLASH_MARGIN = relation({
  title: "Distance of quench oil from its flash point",
  source: "cfr-1910-126",
  locator: "alarm within 50 °F of the flash point, a difference of 27.8 K",
  evidence: "standard",
  inputs: {},
  output: { label: "margin", unit: "K" },
  error: { size: 0, unit: "K", kind: "a rule, not a measurement; local codes may ask for more" },
  note: "The surface of the bath around a hot blade is hotter than the oil as a whole: mix it well.",
});

/** Grouping of furnace loads. */
export const LOAD_GROUPING = relation({
  title: "Furnace loads by recipe",
  source: "shop-arithmetic",
  locator: "heaviest pieces first, each into the first load of its recipe that has room",
  evidence: "standard",
  inputs: {
    pieces: { label: "pieces a load", unit: "", min: 1, max: null },
    mass: { label: "mass a load", unit: "kg", min: 0, max: null },
  },
  output: { label: "loads", unit: "" },
  error: {
    size: null,
    unit: "",
    kind: "every piece in one load; with unequal pieces and a mass limit not always the fewest loads",
  },
});
