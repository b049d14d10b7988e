import { grouped } from './grouped.ts';

/**
 * What a file or a request may hold at most: the one place where it is said. Each limit is far beyond what a shop enters at
 * a time, and small enough that the largest allowed is answered within a second. What is beyond is refused with a sentence,
 * and nothing of it is kept.
 */
export const MOST = {
  /** Bytes of a table's file: text or spreadsheet. */
  fileBytes: 4_000_000,
  /** Bytes of a spreadsheet's parts once they are unpacked, all together, and how many parts there may be. */
  spreadsheetBytes: 24_000_000,
  spreadsheetParts: 500,
  /** Characters of one of its elements with the text behind it: as much as a cell of a spreadsheet holds, with room. */
  markCharacters: 250_000,
  /** Rows of a table's file, its header not counted. */
  rows: 5000,
  /** Lines of a table's file, empty ones counted. */
  lines: 20_000,
  /** Cells in a row of a table's file. */
  columns: 100,
  /** Characters of a cell: as long as a note may be. */
  cellCharacters: 2000,
  /** Characters of a cell that is no note: twice the longest name. */
  shortCellCharacters: 240,
  /** Characters of an export, packed to be sent along with a request, and of a table's file as it is sent. */
  packedCharacters: 40_000_000,
  /** Bytes of an export once it is unpacked. */
  exportBytes: 400_000_000,
  /** Bytes of a request over HTTP that brings an export, of one that brings a table's file, and of any other. */
  exportRequestBytes: 42_000_000,
  fileRequestBytes: 8_000_000,
  requestBytes: 2_000_000,
  /** Lists and objects inside one another. */
  nesting: 24,
  /** Texts, numbers, lists and all else that a request holds together. */
  values: 600_000,
  /** Characters of a text in a request, where its field sets no smaller limit; a file sent along has its own. */
  textCharacters: 4000,
  fileNameCharacters: 300,
  /** Seconds in which a request over HTTP must have arrived whole. */
  arrivalSeconds: 30,
  /** Connections over HTTP at a time. */
  connections: 200,
  /** Bytes of news that wait for a screen which does not take them; past it the screen must connect again. */
  unheardBytes: 16_000_000,
} as const;

/** "4 MB" */
export const megabytes = (bytes: number): string =>
  `${(bytes / 1_000_000).toLocaleString('en-US', { maximumFractionDigits: 1 })} MB`;

const TAKEN: ReadonlySet<string> = new Set(Object.getOwnPropertyNames(Object.prototype));
/** A word that every object of the language knows: under such a code something would be found where nothing was entered. */
export const isTakenWord = (word: string): boolean => TAKEN.has(word);

/** Whether a text holds what a data file cannot give back as it was: NUL, or half of a pair of code units. */
export const hasUnkeepable = (text: string): boolean => text.includes('\0') || /\p{Surrogate}/u.test(text);

interface Allowed {
  readonly values?: number;
  /** Fields whose texts have limits of their own. */
  readonly longTexts?: readonly string[];
}

/**
 * What is wrong with a value from outside before anyone looks at what it says, as the end of a sentence; null: nothing.
 * Each part is looked at once, however deep or circular the whole is, up to the first fault.
 */
export function faultOf(value: unknown, allowed: Allowed = {}): string | null {
  const most = allowed.values ?? MOST.values;
  const open = [{ part: value, depth: 0, field: '' }];
  let seen = 0;
  for (let next = open.pop(); next; next = open.pop()) {
    const { part, depth, field } = next;
    seen += 1;
    const inside = Array.isArray(part) ? part.length : 0;
    if (seen + inside > most) return `it holds more than ${grouped(most)} values`;
    const fault = typeof part === 'string' ? textFault(part, field, allowed) : kindFault(part, depth);
    if (fault) return fault;
    for (const key of keysOf(part)) {
      if (isTakenWord(key) || hasUnkeepable(key) || key.length > MOST.fileNameCharacters)
        return 'a field in it has a name that cannot be one';
      const own = part as Readonly<Record<string, unknown>>;
      open.push({ part: own[key], depth: depth + 1, field: Array.isArray(part) ? field : key });
    }
  }
  return null;
}

const keysOf = (part: unknown): readonly string[] =>
  typeof part === 'object' && part !== null ? Object.keys(part) : [];

function textFault(text: string, field: string, { longTexts = [] }: Allowed): string | null {
  if (text.length > MOST.textCharacters && !longTexts.includes(field))
    return `a text in it is longer than ${grouped(MOST.textCharacters)} characters`;
  return hasUnkeepable(text) ? 'a text in it holds a character that cannot be kept' : null;
}

/** Only what JSON knows, and `undefined` for a field left out. */
function kindFault(part: unknown, depth: number): string | null {
  if (part === null || ['undefined', 'boolean', 'number'].includes(typeof part)) return null;
  const plain = Array.isArray(part) || Object.prototype.toString.call(part) === '[object Object]';
  if (typeof part !== 'object' || !plain)
    return 'a value in it is neither a text, a number, a list nor a set of fields';
  return depth >= MOST.nesting ? `it is nested deeper than ${MOST.nesting} levels` : null;
}
