import { scaleLinear } from "d3-scale";
import { area, line } from "d3-shape";
import { escaped } from "./html";
import { answerOf } from "./worked-call";

const [WIDTH, HEIGHT] = [640, 360];
const [LEFT, RIGHT, TOP, BOTTOM] = [56, 16, 16, 56];

function frame(title: string, width: number, height: number, content: string): string {
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" font-family="sans-serif" font-size="13">
<title>${escaped(title)}</title>
<rect width="${width}" height="${height}" fill="#ffffff"/>
${content}
</svg>
`;
}

type Point = readonly [celsius: number, low: number, likely: number, high: number];

const asNumbers = (rows: readonly (readonly unknown[])[]) => rows.map((row) => row.map(Number));

/** Hardness against temper with its band, as the sheet's own TEMPER_CURVE gives it. */
export function curvePicture(steel: string): string {
  const points = asNumbers(answerOf("TEMPER_CURVE", [steel, 150, 300, 10])) as unknown as readonly Point[];
  const x = scaleLinear([150, 300], [LEFT, WIDTH - RIGHT]);
  const y = scaleLinear([50, 70], [HEIGHT - BOTTOM, TOP]);
  const across = y.ticks(5).map((hrc) => {
    const text = `<text x="${LEFT - 8}" y="${y(hrc) + 4}" text-anchor="end">${hrc}</text>`;
    return `<line x1="${LEFT}" x2="${WIDTH - RIGHT}" y1="${y(hrc)}" y2="${y(hrc)}" stroke="#dddddd"/>${text}`;
  });
  const along = x.ticks(4).map((celsius) => {
    const both = `${celsius} °C / ${Math.round(celsius * 1.8 + 32)} °F`;
    return `<text x="${x(celsius)}" y="${HEIGHT - BOTTOM + 20}" text-anchor="middle">${both}</text>`;
  });
  const band = area<Point>(
    ([c]) => x(c),
    ([, low]) => y(low),
    (point) => y(point[3]),
  )(points);
  const likely = line<Point>(
    ([c]) => x(c),
    (point) => y(point[2]),
  )(points);
  const content = [
    `<path d="${band}" fill="#d9e6f2"/>`,
    ...across,
    ...along,
    `<path d="${likely}" fill="none" stroke="#1b3a57" stroke-width="2"/>`,
    `<text x="${(LEFT + WIDTH - RIGHT) / 2}" y="${HEIGHT - 10}" text-anchor="middle">temper of the steel, 2 h</text>`,
    `<text transform="translate(14 ${HEIGHT / 2}) rotate(-90)" text-anchor="middle">hardness, HRC</text>`,
  ];
  return frame(`${steel}: hardness after a 2 h temper with its band`, WIDTH, HEIGHT, content.join("\n"));
}

interface Stations {
  readonly x: readonly number[];
  readonly width: readonly number[];
  readonly balance: number;
}

/** A blade's profile to scale from its stations, its spine straight, with the balance point. */
export function profilePicture({ x, width, balance }: Stations): string {
  const length = Math.max(...x);
  const scale = (WIDTH - 2 * RIGHT) / length;
  const tall = Math.max(...width) * scale;
  const spine = 40;
  const at = (mm: number) => RIGHT + mm * scale;
  const outline = [
    ...x.map((mm) => `${at(mm)},${spine}`),
    ...x.map((mm, i) => `${at(mm)},${spine + (width[i] ?? 0) * scale}`).reverse(),
  ];
  const end = spine + tall + 18;
  const content = [
    `<polygon points="${outline.join(" ")}" fill="#e8e8e8" stroke="#242424"/>`,
    `<line x1="${at(balance)}" x2="${at(balance)}" y1="${spine - 10}" y2="${end}" stroke="#242424" stroke-dasharray="4 3"/>`,
    `<text x="${at(balance)}" y="${spine - 16}" text-anchor="middle">balance ${balance.toFixed(0)} mm from the heel</text>`,
    `<text x="${at(0)}" y="${end + 14}">heel</text>`,
    `<text x="${at(length)}" y="${end + 14}" text-anchor="end">tip, ${length} mm</text>`,
  ];
  return frame("Profile of the blade to scale with its balance point", WIDTH, end + 28, content.join("\n"));
}
