/** A published point on a picture: equal temper for 2 h in °C, and HRC. */
export interface PicturePoint {
  readonly celsius: number;
  readonly hrc: number;
  readonly mark: "in the curve" | "check" | "never fitted";
  readonly source: string;
}

/** A curve with its band: °C, low, likely, high. */
export type PictureCurve = readonly (readonly [number, number, number, number])[];

const [WIDTH, HEIGHT] = [900, 560];
const [LEFT, RIGHT, TOP, BOTTOM] = [60, 210, 40, 50];
const [COOLEST, HOTTEST, SOFTEST, HARDEST] = [100, 450, 35, 68];
const COLOURS = ["#0f6cbd", "#b10e1c", "#0e700e", "#8a3707", "#5c2e91", "#424242", "#00666d"];

const x = (celsius: number) => LEFT + ((celsius - COOLEST) / (HOTTEST - COOLEST)) * (WIDTH - LEFT - RIGHT);
const y = (hrc: number) => TOP + ((HARDEST - hrc) / (HARDEST - SOFTEST)) * (HEIGHT - TOP - BOTTOM);
const at = (celsius: number, hrc: number) => `${x(celsius).toFixed(1)},${y(hrc).toFixed(1)}`;

function grid(): string {
  const parts: string[] = [];
  for (let celsius = 100; celsius <= HOTTEST; celsius += 50) {
    const f = Math.round(celsius * 1.8 + 32);
    parts.push(
      `<line x1="${x(celsius)}" x2="${x(celsius)}" y1="${TOP}" y2="${HEIGHT - BOTTOM}" stroke="#ddd"/>`,
      `<text x="${x(celsius)}" y="${HEIGHT - 28}" text-anchor="middle">${celsius}</text>`,
      `<text x="${x(celsius)}" y="${HEIGHT - 12}" text-anchor="middle" fill="#666">${f} °F</text>`,
    );
  }
  for (let hrc = SOFTEST; hrc <= HARDEST; hrc += 5) {
    parts.push(
      `<line x1="${LEFT}" x2="${WIDTH - RIGHT}" y1="${y(hrc)}" y2="${y(hrc)}" stroke="#ddd"/>`,
      `<text x="${LEFT - 8}" y="${y(hrc) + 4}" text-anchor="end">${hrc}</text>`,
    );
  }
  return parts.join("\n");
}

function markOf({ celsius, hrc, mark }: PicturePoint, colour: string): string {
  const [cx, cy] = [x(celsius).toFixed(1), y(hrc).toFixed(1)];
  if (mark === "never fitted") {
    return `<path d="M${cx} ${cy}m-3 -3l6 6m-6 0l6 -6" stroke="${colour}" fill="none"/>`;
  }
  const fill = mark === "in the curve" ? colour : "white";
  return `<circle cx="${cx}" cy="${cy}" r="3.5" fill="${fill}" stroke="${colour}"/>`;
}

function legend(sources: readonly string[], points: readonly PicturePoint[]): string {
  return sources
    .map((source, i) => {
      const mark = points.find((point) => point.source === source)?.mark ?? "check";
      const top = TOP + 20 + i * 34;
      const left = WIDTH - RIGHT + 14;
      const colour = COLOURS[i % COLOURS.length];
      return `<text x="${left}" y="${top}" fill="${colour}">${source}</text><text x="${left}" y="${top + 14}" fill="#666">${mark}</text>`;
    })
    .join("\n");
}

/** Points off the paper would look like no points: they are counted under the title. */
export function isOnPaper({ celsius, hrc }: PicturePoint): boolean {
  return celsius >= COOLEST && celsius <= HOTTEST && hrc >= SOFTEST && hrc <= HARDEST;
}

/** A tempering curve beside the points that were published for the grade, as SVG. */
export function curvePicture(title: string, curve: PictureCurve, points: readonly PicturePoint[]): string {
  const sources = [...new Set(points.map(({ source }) => source))];
  const shown = points.filter(isOnPaper);
  const colourOf = (source: string) => COLOURS[sources.indexOf(source) % COLOURS.length] as string;
  const band = [
    ...curve.map(([c, low]) => at(c, low)),
    ...[...curve].reverse().map(([c, , , high]) => at(c, high)),
  ];
  const hidden = points.length - shown.length;
  const note = hidden === 0 ? "" : `, ${hidden} off the paper`;
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${HEIGHT}" font-family="sans-serif" font-size="12">
<rect width="${WIDTH}" height="${HEIGHT}" fill="white"/>
<text x="${LEFT}" y="24" font-size="16">${title}: HRC after 2 h at °C; ${shown.length} published points${note}</text>
${grid()}
<polygon points="${band.join(" ")}" fill="#0f6cbd" fill-opacity="0.12"/>
<polyline points="${curve.map(([c, , likely]) => at(c, likely)).join(" ")}" fill="none" stroke="black" stroke-width="2"/>
${shown.map((point) => markOf(point, colourOf(point.source))).join("\n")}
${legend(sources, points)}
</svg>
`;
}
