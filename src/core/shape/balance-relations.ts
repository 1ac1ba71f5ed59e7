import { type Limit, relation } from "../relation";

const open = (label: string, unit: string): Limit => ({ label, unit, min: null, max: null });

const NOT_THE_NODE =
  "Rigid body only: the blade's own bending is left out. It is not the node of vibration near the point, which " +
  "some texts call by the same name.";

/** Mass, balance and inertia of parts put together. */
export const ASSEMBLED = relation({
  title: "Mass, balance and inertia of parts put together",
  source: "rigid-body",
  locator: "sums of mass and moment; parallel axes",
  evidence: "standard",
  inputs: { mass: { label: "mass", unit: "g", min: 0, max: null }, position: open("position", "mm") },
  output: { label: "inertia", unit: "kg m²" },
  error: { size: 0, unit: "kg m²", kind: "exact for the masses, places and own inertias given" },
  note: "A part without an own inertia counts as a point: for a long part (blade, guard, tang) give it.",
});

/** Points that turn about each other. */
export const PERCUSSION = relation({
  title: "Centre of percussion (pivot point) that belongs to a held point",
  source: "kiel-iron-steel-swords",
  locator: "distance from the balance: inertia ÷ (mass × distance of the held point)",
  evidence: "standard",
  inputs: { held: open("held at", "mm") },
  output: { label: "position", unit: "mm" },
  error: { size: null, unit: "mm", kind: "exact for a rigid body; as good as the inertia given" },
  note: `Points come in pairs: each is the centre of percussion of the other. ${NOT_THE_NODE}`,
});

/** Mass that a target feels. */
export const IMPACT_MASS = relation({
  title: "Effective mass at a place of impact",
  source: "kiel-iron-steel-swords",
  locator: "1 ÷ (1 / mass + distance² / inertia)",
  evidence: "standard",
  inputs: { at: open("at", "mm") },
  output: { label: "effective mass", unit: "g" },
  error: { size: null, unit: "g", kind: "exact for a free rigid body; the hand adds to it near the grip" },
  note: NOT_THE_NODE,
});

/** Mass at a place that moves the balance. */
export const COUNTERWEIGHT = relation({
  title: "Mass of the pommel for a wanted balance",
  source: "rigid-body",
  locator: "equal moments about the wanted balance",
  evidence: "standard",
  inputs: { wanted: open("wanted balance", "mm") },
  output: { label: "pommel", unit: "g" },
  error: { size: 0, unit: "g", kind: "exact for the masses and places given" },
});

/** Inertia from a swing. */
export const PENDULUM = relation({
  title: "Inertia from the period of a pendulum",
  source: "rigid-body",
  locator: "mass × g × distance × period² ÷ 4π², less mass × distance²; g 9.80665 m/s²",
  evidence: "measured",
  inputs: { period: { label: "period", unit: "s", min: 0, max: null } },
  output: { label: "inertia about the balance", unit: "kg m²" },
  error: {
    size: null,
    unit: "kg m²",
    kind: "small swings of a few degrees on a free pivot; 1 % of the period is about 3 % of the inertia",
  },
  note: "Hang the blade near the end of its tang or grip, time 20 swings there and back, divide by 20.",
});

/** Angles, bevels and wheels. */
export const EDGE_GEOMETRY = relation({
  title: "Geometry of edges and wheels",
  source: "plane-geometry",
  locator: "right triangle of the edge bevel; arc over a chord",
  evidence: "standard",
  inputs: { angle: { label: "angle a side", unit: "°", min: 0, max: 45 } },
  output: { label: "length or angle", unit: "" },
  error: { size: 0, unit: "", kind: "exact for straight bevels and round wheels" },
  note: "Angles are per side; an edge sharpened at 15° a side is a 30° edge included.",
});

/** Bend radius at yield. */
export const BEND_TO_SET = relation({
  title: "Bend radius at which a blade would take a set",
  source: "pavlina-van-tyne-2008",
  locator: "E × thickness ÷ (2 × yield strength); E 205 GPa (from memory, 190 to 210); yield from hardness",
  evidence: "fitted",
  inputs: {
    thickness: { label: "thickness", unit: "mm", min: 0, max: null },
    hrc: { label: "hardness", unit: "HRC", min: 20, max: 58 },
  },
  output: { label: "bend radius", unit: "mm" },
  error: { size: 15, unit: "%", kind: "yield strength ±12 % and elastic modulus -7 to +2 %, taken together" },
  note:
    "Blade hardened through, without notches, bent evenly. It may break before it sets: this is not a radius " +
    "for a proof test. Hardness does not change the stiffness, only where the set begins.",
});
