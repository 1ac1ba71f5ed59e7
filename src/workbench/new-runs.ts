import type { Book } from "../workbook/book/book";
import { bookOfModel } from "../workbook/book/model-book";
import { demoWorkbook } from "../workbook/demo/demo-workbook";

/** The invented run that the page opens with. */
export const demoBook = (): Book => bookOfModel(demoWorkbook());

/** A new run: the planning template with empty lines. It is large, so it is loaded only when it is asked for. */
export async function blankBook(): Promise<Book> {
  const { planningTemplate } = await import(
    /* webpackChunkName: "template" */ "../workbook/template/planning-template"
  );
  return bookOfModel(planningTemplate());
}
