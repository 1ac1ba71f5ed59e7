import { checkFormula, type Oddity } from "./remarks";

/** A cell that holds a day, and the days that it cannot lie before or after. All are addresses or formulas. */
export interface DayCell {
  readonly cell: string;
  /** What the day is called where it stands in a row with others. */
  readonly name?: string;
  readonly notBefore?: readonly DayLimit[];
  readonly notAfter?: readonly DayLimit[];
  /** A calendar week such as 2026-W41 may stand for the day. */
  readonly isWeek?: boolean;
  /** Words such as "7 weeks" may stand for the day; they are held against nothing. */
  readonly mayBeWords?: boolean;
}

type DayLimit = readonly [cell: string, words: string];

/** Monday of a week as ISO 8601 writes it: the week of 4 January is the first. */
function mondayOf(cell: string): string {
  const fourth = `DATE(LEFT(${cell},4),1,4)`;
  return `IFERROR(${fourth}-WEEKDAY(${fourth},3)+7*(RIGHT(${cell},2)-1),0)`;
}

/** First and last day that a cell may mean; 0 where it means none. */
function spanOf({ cell, isWeek }: DayCell): readonly [first: string, last: string] {
  if (isWeek !== true) return [`N(${cell})`, `N(${cell})`];
  const monday = mondayOf(cell);
  return [
    `IF(ISNUMBER(${cell}),${cell},${monday})`,
    `IF(ISNUMBER(${cell}),${cell},IF(${monday}=0,0,${monday}+6))`,
  ];
}

/** What is odd about a day: text in place of a date, or a day before or after one that it has to follow or to precede. */
export function dayOddities(day: DayCell): Oddity[] {
  const { cell, name, notBefore = [], notAfter = [] } = day;
  const mayBeText = day.isWeek === true || day.mayBeWords === true;
  const named = name === undefined ? "" : `${name} `;
  const [first, last] = spanOf(day);
  const against = (is: string, limits: readonly DayLimit[], own: string, word: string) =>
    limits.map(([limit, words]) => ({
      when: `AND(${own}>0,N(${limit})>0,${own}${is}N(${limit}))`,
      said: `"${named}${word} ${words}"`,
    }));
  return [
    ...(mayBeText
      ? []
      : [
          { when: `ISTEXT(${cell})*(${cell}<>"")>0`, said: `"${named}is no date: write it like 2026-10-05"` },
        ]),
    ...against("<", notBefore, last, "before"),
    ...against(">", notAfter, first, "after"),
  ];
}

/** "OK", or CHECK with what is odd about the days of a row; empty while the row has none. */
export function dayCheck(days: readonly DayCell[]): string {
  const none = days.map(({ cell }) => `${cell}=""`).join(",");
  return `IF(AND(${none}),"",${checkFormula(days.flatMap(dayOddities))})`;
}
