import type { Package } from "../package/package";
import { walkXml } from "../package/xml";

/** Attributes of a colour element: `rgb`, or `theme` with `tint`. */
export type ColourAttributes = Readonly<Record<string, string>>;

/** Gives a colour as `#rrggbb`; `undefined` where the file leaves it to the program. */
export type ColourOf = (attributes: ColourAttributes) => string | undefined;

/** Colours of a theme stand in this order (ECMA-376 Part 1, 18.8.3), the two pairs of dark and light swapped. */
const THEME_ORDER = [
  "lt1",
  "dk1",
  "lt2",
  "dk2",
  ...["1", "2", "3", "4", "5", "6"].map((n) => `accent${n}`),
  "hlink",
  "folHlink",
];

function readTheme(file: Package, part: string | undefined): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  if (part === undefined || !file.has(part)) return found;
  let slot = "";
  walkXml(part, file.text(part), {
    open({ name, attributes }) {
      if (THEME_ORDER.includes(name)) slot = name;
      const colour = name === "srgbClr" ? attributes.val : attributes.lastClr;
      const isColour = (name === "srgbClr" || name === "sysClr") && slot !== "" && !found.has(slot);
      if (isColour && colour !== undefined) found.set(slot, colour);
    },
    close(name) {
      if (name === slot) slot = "";
    },
  });
  return found;
}

const channels = (hex: string) => [0, 2, 4].map((at) => Number.parseInt(hex.slice(at, at + 2), 16));
const hexOf = (values: readonly number[]) =>
  `#${values.map((value) => Math.round(value).toString(16).padStart(2, "0")).join("")}`;

/**
 * Lightens or darkens a colour, `tint` from -1 to 1 (ECMA-376 Part 1, 18.8.19): lightness in HSL moves towards
 * black or white, hue and saturation stay.
 */
function tinted(hex: string, tint: number): string {
  const rgb = channels(hex);
  const [high, low] = [Math.max(...rgb) / 255, Math.min(...rgb) / 255];
  const light = (high + low) / 2;
  const wanted = tint < 0 ? light * (1 + tint) : light + (1 - light) * tint;
  const spread = 1 - Math.abs(2 * light - 1);
  const chroma = spread === 0 ? 0 : ((high - low) / spread) * (1 - Math.abs(2 * wanted - 1));
  const scale = high === low ? 0 : chroma / (high - low);
  return hexOf(rgb.map((value) => 255 * Math.min(1, Math.max(0, wanted + (value / 255 - light) * scale))));
}

/** Makes the reader of colours for a workbook with the given theme. */
export function coloursOf(file: Package, theme: string | undefined): ColourOf {
  const themed = readTheme(file, theme);
  return ({ rgb, theme: place, tint }) => {
    const hex = rgb?.slice(-6) ?? themed.get(THEME_ORDER[Number(place ?? Number.NaN)] ?? "");
    if (hex === undefined || !/^[0-9a-f]{6}$/i.test(hex)) return undefined;
    const shift = Number(tint ?? 0);
    return shift === 0 || Number.isNaN(shift) ? `#${hex.toLowerCase()}` : tinted(hex, shift);
  };
}
