import {
  densityOf,
  findSteel,
  Refusal,
  startsNeeded,
  steelOrder,
  steelsFor,
  taperedBlade,
  temperedRange,
} from "blade-metallurgy";

// 1. Which steel for a use, of those that the shop can have, and why.
const offered = ["1084", "5160", "65Mn"].map((name) => ({ steel: findSteel(name) }));
const [first] = steelsFor({ use: "Machete light", thickness: 3, quench: "fast oil" }, offered);
console.log(`${first.steel.name}: temper at ${first.temperC} °C. ${first.why}`);

// 2. Hardness after temper [HRC], as a range. 205 is in °C: 400 would be read as °C too.
const { low, likely, high } = temperedRange("1095", 205);
console.log(`${Math.round(low)} to ${Math.round(high)} HRC, likely ${Math.round(likely)}`);

// 3. Mass [g] and balance [mm] of a blade that tapers, in mm.
const blade = { grind: "flat", length: 200, width: 30, thickness: 3, tipWidth: 10, tipThickness: 2 };
const { mass, balance } = taperedBlade(blade, densityOf("1095").value);
console.log(`${mass.toFixed(1)} g, balance at ${balance.toFixed(1)} mm`);

// 4. Blades to start for 24 good ones where 92 of 100 come out good, with a chance of 0.9.
const starts = startsNeeded(24, 0.92);
console.log(`start ${starts}`);

// 5. Bars to buy for them, kerf 1.2 mm and trim 10 mm; what cannot be is refused with a sentence.
const blanks = {
  steel: findSteel("1095"),
  width: 40,
  thickness: 4,
  length: 300,
  quantity: starts,
  barLength: 3000,
};
const [order] = steelOrder([blanks]);
console.log(`${order.bars} bars of ${order.steel} ${order.section}, ${order.kilograms.toFixed(2)} kg`);
try {
  steelOrder([{ ...blanks, length: -300 }]);
} catch (refusal) {
  if (refusal instanceof Refusal) console.log(`${refusal.name}: ${refusal.message}`);
}
