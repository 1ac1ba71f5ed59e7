/** The one call of React that a component of the grid's own popups needs; the package brings no types. */
declare module "react" {
  export function createElement(type: string, properties: object): unknown;
}
