import type { Page } from "playwright-core";

/**
 * Just enough of office.js for the adapter: one selected cell, Plan!B2, that holds what `holds`
 * says; `window.written` collects what was written. Not the vendor's code: it shows only that the
 * pane asks for what the documented interface offers.
 */
export async function fakeExcel(page: Page, holds: string): Promise<void> {
  const script = `
    window.written = [];
    const cell = { address: "Plan!B2", text: [[${JSON.stringify(holds)}]],
      formulasLocal: [[${JSON.stringify(holds)}]], values: [[${JSON.stringify(holds)}]], valueTypes: [["String"]], load() {} };
    Object.defineProperty(cell, "formulas", {
      get: () => [[${JSON.stringify(holds)}]],
      set: (rows) => window.written.push(rows[0][0]),
    });
    window.OfficeExtension = { Error: class extends Error {} };
    window.CustomFunctions = { associate() {} };
    window.Excel = {
      run: (work) => work({ workbook: { getActiveCell: () => cell }, sync: async () => undefined }),
    };
    window.Office = {
      HostType: { Excel: "Excel" },
      EventType: { DocumentSelectionChanged: "documentSelectionChanged" },
      context: { document: { addHandlerAsync() {} }, officeTheme: { bodyBackgroundColor: "#262626" } },
      onReady: async () => ({ host: "Excel" }),
    };`;
  await page.route(/office\/office\.js/, (route) =>
    route.fulfill({ contentType: "text/javascript", body: script }),
  );
}
