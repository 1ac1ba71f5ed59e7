import { describe, expect, it } from "vitest";
import { momentOf } from "../../../src/workbook/share/date-styles";
import { momentText } from "../../../src/workbook/share/moments";

// Codes of number formats and the days of both calendars: ECMA-376 Part 1, 18.8.30, 18.8.31 and 18.17.4.1.

describe("how a number format shows a number", () => {
  it.each([
    ["yyyy-mm-dd", "date"],
    ["d/m", "date"],
    ["mmm", "date"],
    ["M", "date"],
    ["yy", "date"],
    ["DD.MM.YYYY", "date"],
    ["hh:mm", "time"],
    ["H:MM AM/PM", "time"],
    ["mm:ss", "time"],
    ["ss", "time"],
    ["d.m.yyyy h:mm", "both"],
    ["yyyy/mm/dd ss", "both"],
    ["[$-409]d-mmm-yy", "date"],
    ["[Red]hh:mm", "time"],
    ["[h]:mm", undefined],
    ["[hh]:mm", undefined],
    ["[mm]:ss", undefined],
    ["[s]", undefined],
    ["[S].00", undefined],
    ["General", undefined],
    ["GENERAL", undefined],
    ["0.00", undefined],
    ['0.0" mm"', undefined],
    ['0" days"', undefined],
    ["0\\d", undefined],
    ["_d0", undefined],
    ["*h0", undefined],
    ["[Magenta]0", undefined],
    ["[$EUR-2]0", undefined],
    ["#,##0;d", undefined],
    ["", undefined],
    ['d" of "mmmm', "date"],
  ] as const)("%s: %s", (code, moment) => {
    expect(momentOf(code)).toBe(moment);
  });
});

describe("a count of days in the notation of ISO 8601", () => {
  it("is a day, a day with its time, or a time of day, seconds only where there are some", () => {
    expect(momentText(46351, "date", false)).toBe("2026-11-25");
    expect(momentText(46351, "both", false)).toBe("2026-11-25T00:00");
    expect(momentText(46351.25, "date", false)).toBe("2026-11-25T06:00");
    expect(momentText(46351 + 1 / 86400, "both", false)).toBe("2026-11-25T00:00:01");
    expect(momentText(46351.5, "time", false)).toBe("2026-11-25T12:00");
    expect(momentText(0.75, "time", false)).toBe("18:00");
    expect(momentText(0.5 + 30 / 86400, "time", false)).toBe("12:00:30");
    expect(momentText(0, "time", false)).toBe("00:00");
  });

  it("counts from 1904 where the workbook does", () => {
    expect(momentText(44889, "date", true)).toBe("2026-11-25");
    // 1 March 1900 is before that calendar begins; its day nought is 1 January 1904.
    expect(momentText(0, "date", true)).toBe("1904-01-01");
    expect(momentText(0.25, "time", true)).toBe("06:00");
  });

  it("has none before 1 March 1900, since that calendar counts a day that never was, and none after 9999", () => {
    expect(momentText(60, "date", false)).toBeUndefined();
    expect(momentText(61, "date", false)).toBe("1900-03-01");
    expect(momentText(60.5, "time", false)).toBeUndefined();
    expect(momentText(0.5, "date", false)).toBeUndefined();
    expect(momentText(-0.5, "time", false)).toBeUndefined();
    expect(momentText(1, "time", false)).toBeUndefined();
    expect(momentText(2_958_465, "date", false)).toBe("9999-12-31");
    expect(momentText(2_958_465.5, "both", false)).toBe("9999-12-31T12:00");
    expect(momentText(2_958_466.5, "both", false)).toBeUndefined();
    expect(momentText(-2000, "date", true)).toBeUndefined();
  });
});
