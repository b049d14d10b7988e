/** Characters of a text from a file that a sentence repeats. */
const CHARACTERS = 60;

/** A text from a file as a sentence repeats it: “so”, cut where it is long. */
const quote = (text: string): string =>
  `“${text.length > CHARACTERS ? `${text.slice(0, CHARACTERS)}…` : text}”`;

/** Several of them: “a”, “b” and 3 more. */
export function quoted(texts: readonly string[], most = 20): string {
  const shown = texts.slice(0, most).map(quote).join(', ');
  return texts.length > most ? `${shown} and ${texts.length - most} more` : shown;
}
