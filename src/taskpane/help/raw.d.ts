/** A file taken in as its text. */
declare module "*.html?raw" {
  const text: string;
  // biome-ignore lint/style/noDefaultExport: how a bundler hands over the text of a file
  export default text;
}

declare module "*.css?raw" {
  const text: string;
  // biome-ignore lint/style/noDefaultExport: how a bundler hands over the text of a file
  export default text;
}
