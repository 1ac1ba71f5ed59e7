import { checkRange, relation } from "../relation";

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

/** One piece of the specific heat, as its integral from any fixed point, J/kg. */
interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly integral: (celsius: number) => number;
}

/** EN 1993-1-2: c = 425 + 0.773 T - 1.69e-3 T² + 2.22e-6 T³, and so on, J/(kg K). */
const STRETCHES: readonly Stretch[] = [
  {
    from: 20,
    to: 600,
    integral: (t) => t * (425 + t * (0.773 / 2 + t * (-1.69e-3 / 3 + (t * 2.22e-6) / 4))),
  },
  { from: 600, to: 735, integral: (t) => 666 * t - 13_002 * Math.log(738 - t) },
  { from: 735, to: 900, integral: (t) => 545 * t + 17_820 * Math.log(t - 731) },
  { from: 900, to: 1200, integral: (t) => 650 * t },
];

/** Heat above 20 °C, kJ/kg. */
function aboveRoom(celsius: number): number {
  const joules = STRETCHES.filter(({ from }) => celsius > from).reduce((sum, { from, to, integral }) => {
    return sum + integral(Math.min(to, celsius)) - integral(from);
  }, 0);
  return joules / 1000;
}

/**
 * Heat that a kilogram of steel takes up from one temperature to another.
 *
 * @param from - 20 to 1200 [°C]
 * @param to - 20 to 1200 [°C]
 * @returns Heat; below 0 where the steel cools [kJ/kg]
 * @throws NotAvailable outside that range.
 * Error and source: {@link STEEL_HEAT}.
 */
export function heatContent(from: number, to: number): number {
  checkRange(STEEL_HEAT, "temperature", from);
  checkRange(STEEL_HEAT, "temperature", to);
  return aboveRoom(to) - aboveRoom(from);
}
