import { expect, it } from "vitest";
import { ownNamesTyped, storedForm } from "../../src/formula/own-names";
import { fileForm, typedForm } from "../../src/formula/stored-form";

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
  // A name that LET gives is marked where it is called as well.
  ["=LET(f,LAMBDA(x,x+1),f(2))", "_xlfn.LET(_xlpm.f,_xlfn.LAMBDA(_xlpm.x,_xlpm.x+1),_xlpm.f(2))"],
])("writes %s as a file holds it", (typed, stored) => {
  expect(fileForm(typed)).toBe(stored);
});

it.each([
  "=SUM(A1:A3)",
  "=SORT(FILTER(A1:A9,B1:B9>0))",
  "=BLADE.CARBON('Run (old)'!A1)&\"_xlfn.SORT(1)\"",
  "=LET(f,LAMBDA(x,x+1),f(2))",
  "=SUM(Lines[[#This Row],[Temper C]])",
])("reads what it wrote: %s", (typed) => {
  expect(`=${typedForm(fileForm(typed))}`).toBe(typed);
});

it.each([
  ["[2]!_xldudf_BLADE_CARBON(A1)", "BLADE.CARBON(A1)", "_xldudf_BLADE_CARBON(A1)"],
  ["[2]Addin!blade.carbon(A1)", "BLADE.CARBON(A1)", "_xldudf_BLADE_CARBON(A1)"],
  ["'C:\\x\\[blade.xlam]y'!_xldudf_blade_carbon (A1)", "BLADE.CARBON (A1)", "_xldudf_BLADE_CARBON (A1)"],
  ['"_xldudf_BLADE_CARBON("', '"_xldudf_BLADE_CARBON("', '"_xldudf_BLADE_CARBON("'],
])("%s is typed %s and stored %s", (given, typed, stored) => {
  expect(ownNamesTyped(given)).toBe(typed);
  expect(storedForm(given)).toBe(stored);
});

it("formulas of one form are typed with the addresses and numbers that each has", () => {
  const stored = (row: number) =>
    `_xlfn.TEXTJOIN(" A1, ",TRUE,$B${row},_xldudf_BLADE_CARBON('Lot 2'!C$${row})+${row}.5,"_xlfn.A1")`;
  const typed = (row: number) =>
    `TEXTJOIN(" A1, ",TRUE,$B${row},BLADE.CARBON('Lot 2'!C$${row})+${row}.5,"_xlfn.A1")`;
  for (const row of [1, 7, 48, 1_048_576]) expect(typedForm(stored(row))).toBe(typed(row));
  // Nothing of a name that a formula gives itself is taken for an address, marked or not.
  for (const name of ["x", "rate", "T1"])
    expect(typedForm(`_xlfn.LET(_xlpm.${name},A2,_xlpm.${name}*2)`)).toBe(`LET(${name},A2,${name}*2)`);
});
