/** How words of a file are compared: as people read them, whatever the case, accents, marks and gaps. */

/** "Auftrags-Nr." and "AUFTRAGS NR" are both "auftrags nr"; letters of other scripts stay. */
export const plainWords = (text: string): string =>
  text
    .normalize('NFKD')
    .replaceAll(/\p{M}/gu, '')
    .toLowerCase()
    .replaceAll('ß', 'ss')
    .replaceAll('#', ' nr ')
    .replaceAll(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();

/** The same without gaps: "RAL 7016" and "ral-7016" are both "ral7016". */
export const closeWords = (text: string): string => plainWords(text).replaceAll(' ', '');

/** Letters to add, drop or change to get from one word to the other. Levenshtein, Soviet Physics Doklady 10(8), 1966. */
export function keystrokes(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const swap = (row[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(swap, (row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1));
    }
    row = next;
  }
  return row[b.length] ?? 0;
}
