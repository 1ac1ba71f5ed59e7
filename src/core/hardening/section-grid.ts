/** A tapered section, millimetres. */
export interface SectionShape {
  /** Edge to spine, above 0 [mm]. */
  readonly widthMm: number;
  /** Thickness of the spine, above 0 [mm]. */
  readonly spineMm: number;
  /** Thickness at the edge when it is quenched, above 0 [mm]. */
  readonly edgeMm: number;
}

/**
 * Half a section, mirrored at mid-plane: columns from edge to spine, layers from mid-plane to
 * flank, layer height following the taper. Metres and square metres a metre of blade.
 */
export interface SectionGrid {
  readonly columns: number;
  readonly layers: number;
  /** Column width. */
  readonly dx: number;
  /** Half thickness at the middle of each column. */
  readonly half: Float64Array;
  /** Half thickness at each column border, edge face first. */
  readonly border: Float64Array;
  /** Length of the flank over each column. */
  readonly flank: number;
}

/** Cells of the standard grid: a finer one moves the hardened depth by under 0.1 mm. */
const STANDARD_CELLS = { columns: 30, layers: 3 } as const;

export function sectionGrid(
  { widthMm, spineMm, edgeMm }: SectionShape,
  { columns, layers }: { readonly columns: number; readonly layers: number } = STANDARD_CELLS,
): SectionGrid {
  const width = widthMm / 1000;
  const halfAt = (share: number) => (edgeMm + share * (spineMm - edgeMm)) / 2000;
  const slope = (halfAt(1) - halfAt(0)) / width;
  return {
    columns,
    layers,
    dx: width / columns,
    half: Float64Array.from({ length: columns }, (_, i) => halfAt((i + 0.5) / columns)),
    border: Float64Array.from({ length: columns + 1 }, (_, i) => halfAt(i / columns)),
    flank: (width / columns) * Math.hypot(1, slope),
  };
}
