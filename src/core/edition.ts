import data from "../data/edition.json";

/** Edition of the data files, by year and month. */
export const DATA_EDITION: string = data.edition;
