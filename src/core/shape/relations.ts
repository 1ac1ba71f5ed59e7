import { type Limit, relation } from "../relation";

const length = (label: string, min: number): Limit => ({ label, unit: "mm", min, max: null });

/** Areas of cross-sections. */
export const SECTION_AREA = relation({
  title: "Area of a blade's cross-section",
  source: "plane-geometry",
  locator: "trapezium, triangle, circular segment",
  evidence: "standard",
  inputs: {
    width: length("width", 0),
    thickness: length("thickness", 0),
    edge: length("edge thickness", 0),
  },
  output: { label: "area", unit: "mm²" },
  error: { size: null, unit: "mm²", kind: "exact for the outline described; the real grind is not" },
  note:
    "The small triangle of the final edge bevel is not counted (edge² ÷ 4 tan of the angle a side: " +
    "0.15 mm² for 0.4 mm at 15°). Edge at most the thickness, bevel height at most the width, a wheel's " +
    "radius at least half the bevel face, metal left in the hollow, no bulge beyond the thickness.",
});

/** Volume, mass, balance and inertia from stations. */
export const STATION_MOMENTS = relation({
  title: "Volume, balance and inertia of a blade from its stations",
  source: "slender-body",
  locator: "integrals of area, area times x, area times x²",
  evidence: "standard",
  inputs: { stations: { label: "stations", unit: "", min: 2, max: null } },
  output: { label: "volume", unit: "mm³" },
  error: { size: null, unit: "mm³", kind: "exact for straight sections, 1e-12 of the figure for arcs" },
  note:
    "Width and thickness each vary in a straight line between stations. Inertia leaves out the width of the " +
    "blade: about 0.15 % low for a sword, 5 % for a kitchen knife 210 mm long. Holes, choils and the plunge are not counted.",
});

/** Fullers of circular section. */
export const FULLER = relation({
  title: "Metal that a fuller removes",
  source: "plane-geometry",
  locator: "circular segment below the chord, and the crown of the face above it",
  evidence: "standard",
  inputs: { width: length("fuller width", 0), depth: length("fuller depth", 0) },
  output: { label: "area", unit: "mm²" },
  error: {
    size: 0,
    unit: "mm²",
    kind: "exact for a groove of circular section along the middle of the face",
  },
  note: "Depth is measured from the chord that joins the two rims.",
});
