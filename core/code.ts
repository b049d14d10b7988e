import { isTakenWord } from './input-limits.ts';

const MOST_CHARACTERS = 40;

/**
 * A code made of a name, for a row that needs one: "Dark grey" → "dark-grey". With a figure behind it where it is in use.
 * @param taken codes in use; one that differs in case only is in use, too
 * @returns 1 to 40 letters, digits, dots, dashes and underscores, as core/fields.ts `code` asks
 */
export function freeCode(name: string, taken: Iterable<string>): string {
  const used = new Set([...taken].map((code) => code.toLowerCase()));
  return freeCodeBut(name, (code) => used.has(code));
}

/** The same for many names after one another. @param isTaken whether a code, in small letters, is in use */
export function freeCodeBut(name: string, isTaken: (code: string) => boolean): string {
  const plain = name
    .normalize('NFKD')
    .replace(/\p{Mark}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9._]+/g, '-')
    .replace(/-[.]/g, '-')
    .replace(/^[^a-z0-9]+|-+$/g, '');
  const stem = plain === '' || isTakenWord(plain) ? 'new' : plain;
  for (let number = 1; ; number += 1) {
    const end = number === 1 ? '' : `-${number}`;
    const code = `${stem.slice(0, MOST_CHARACTERS - end.length)}${end}`;
    if (!isTaken(code)) return code;
  }
}
