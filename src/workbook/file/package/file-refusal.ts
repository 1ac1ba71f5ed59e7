/** A file that is declined, with a sentence for the person who named it. The file itself is left as it is. */
export class FileRefusal extends Error {
  override readonly name = "FileRefusal";
}
