let last = 0;

/** An id that no other element of the page has, whoever else put elements there. */
export function freshId(stem: string): string {
  last += 1;
  return `blade-pane-${stem}-${last}`;
}
