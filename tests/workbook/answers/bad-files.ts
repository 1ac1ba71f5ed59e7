import { strToU8, zipSync } from "fflate";

const csv = (...lines: readonly string[]) => strToU8(lines.join("\r\n"));

/**
 * Bad answers to the orders of R-07, one fault a file.
 *
 * @param copy - Number of the copy that they say they answer.
 */
export const badFiles = (copy: string): Readonly<Record<string, Uint8Array>> => ({
  "other-plan.csv": csv("Key,Price", "O-ZZZZ0000/L4/S4,3.05"),
  "gone.csv": csv("Key,Price,Heat no.", `O-${copy}/L9/S9,3.05,Q9`),
  "unit.csv": csv("Key,Price,Price for", `O-${copy}/L1/S1,3.05,stone`),
  "currency.csv": csv("Key,Price", `O-${copy}/L2/S2,4.10 USD`),
  "carbon.csv": csv("Key,C %", `O-${copy}/L4/S4,95`),
  "vickers.csv": csv(
    "Key,Piece,1st HRC,2nd HRC,3rd HRC",
    `R-${copy}/HB5/L5/1,R-07-L5-02,650 HV,52,52.2`,
    `R-${copy}/HB5/L5/2,R-07-L5-03,61.0,60.8,61.2`,
  ),
  "half.csv": csv("Key,Price,Week of delivery", `E-${copy}/L4/S4,3.05,`),
  "first.csv": csv("Key,Price", `O-${copy}/L5/S5,3.40`),
  "second.csv": csv("Key,Price", `O-${copy}/L5/S5,3.60`),
  "date.csv": csv("Answered by,shop,Date,03/04/2026", "Key,Heat no.", `O-${copy}/L3/S3,H3`),
  "formula.csv": csv("Key,Remarks", `O-${copy}/L4/S4,"=HYPERLINK(""http://a.invalid"",""x"")"`),
  "thousands.csv": csv("Key,Minimum charge", `E-${copy}/L5/S5,"1,200"`),
  "noise.bin": Uint8Array.from({ length: 4000 }, (_, at) => (at * 73) % 251),
  "empty.csv": csv("Hello", "this is not the table"),
  "no-workbook.xlsx": zipSync({ "a.txt": strToU8("x") }),
  "entities.xlsx": zipSync({
    "[Content_Types].xml": strToU8(
      '<!DOCTYPE a [<!ENTITY b SYSTEM "file:///etc/passwd">]><Types>&b;</Types>',
    ),
    "xl/workbook.xml": strToU8("<workbook/>"),
  }),
  "macros.xlsx": zipSync({
    "[Content_Types].xml": strToU8(
      '<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Override PartName="/xl/workbook.xml" ContentType="application/vnd.ms-excel.sheet.macroEnabled.main+xml"/></Types>',
    ),
  }),
});
