import { expect, it } from "vitest";
import { fileForm } from "../../src/formula/file-form";

// Marks of newer functions and of names that LET gives, as Excel writes them (MS-XLSX 2.2.2, from memory; the same
// forms stand in the documentation of XlsxWriter, "Formulas added in Excel 2010 and later").
it.each([
  ["=SUM(A1:A3)", "SUM(A1:A3)"],
  ['=TEXTJOIN("; ",TRUE,A1,A2)', '_xlfn.TEXTJOIN("; ",TRUE,A1,A2)'],
  ["=SORT(FILTER(A1:A9,B1:B9>0))", "_xlfn._xlws.SORT(_xlfn._xlws.FILTER(A1:A9,B1:B9>0))"],
  ["=BLADE.HARDNESS(A1,B1,C1)", "_xldudf_BLADE_HARDNESS(A1,B1,C1)"],
  [
    "=LET(found,BLADE.CERTIFICATE(B5,E3:O3,E5:O5),INDEX(found,ROWS(found),5))",
    "_xlfn.LET(_xlpm.found,_xldudf_BLADE_CERTIFICATE(B5,E3:O3,E5:O5),INDEX(_xlpm.found,ROWS(_xlpm.found),5))",
  ],
  ['=IF(A1="SORT(x)","LET(found,1)",IFS(A1=1,2))', 'IF(A1="SORT(x)","LET(found,1)",_xlfn.IFS(A1=1,2))'],
  ["='IFS(1)'!A1+IFNA(A2,0)", "'IFS(1)'!A1+_xlfn.IFNA(A2,0)"],
])("writes %s as a file holds it", (typed, stored) => {
  expect(fileForm(typed)).toBe(stored);
});
