import type { Moment } from "./date-styles";

const DAY_MS = 86_400_000;
/** 1 January 1970 in days of the 1900 calendar, and how far the 1904 calendar lags behind. */
const EPOCH = 25_569;
const LAG_OF_1904 = 1462;
/** Up to here the 1900 calendar counts a day that never was, so its earlier days have no date in ISO 8601. */
const FIRST_TRUE_DAY = 61;
const LAST_DAY = 2_958_465;

function timeText(iso: string): string {
  const time = iso.slice(11, 19);
  return time.endsWith(":00") ? time.slice(0, 5) : time;
}

/** A day or time counted in days, in the notation of ISO 8601; `undefined` where it has none. */
export function momentText(
  serial: number,
  moment: Exclude<Moment, undefined>,
  from1904: boolean,
): string | undefined {
  const days = from1904 ? serial + LAG_OF_1904 : serial;
  const isTime = moment === "time" && serial >= 0 && serial < 1;
  if (!isTime && (days < FIRST_TRUE_DAY || days > LAST_DAY + 1)) return undefined;
  const seconds = Math.round((days - EPOCH) * (DAY_MS / 1000));
  const iso = new Date(seconds * 1000).toISOString();
  if (isTime) return timeText(iso);
  const isWhole = iso.slice(11, 19) === "00:00:00";
  return moment === "date" && isWhole ? iso.slice(0, 10) : `${iso.slice(0, 10)}T${timeText(iso)}`;
}
