/** Names of the sheets that can be seen. */
export async function sheetNames(): Promise<readonly string[]> {
  return Excel.run(async (context) => {
    const { worksheets } = context.workbook;
    worksheets.load("items/name,items/visibility");
    await context.sync();
    const seen = worksheets.items.filter(({ visibility }) => visibility === "Visible");
    return seen.map(({ name }) => name);
  });
}

/** Brings a sheet to the front. */
export async function showSheet(name: string): Promise<void> {
  await Excel.run(async (context) => {
    const sheet = context.workbook.worksheets.getItemOrNullObject(name);
    await context.sync();
    if (sheet.isNullObject) throw new Error(`The workbook has no sheet called "${name}" any more.`);
    sheet.activate();
    await context.sync();
  });
}
