import writeXlsxFile, { type Cell } from 'write-excel-file/node';
import type { Dialect } from './dialect.ts';
import type { Written } from './write-cell.ts';

/** The bytes that a file of these cells has on the disk. */
export const toBytes = async (
  rows: readonly (readonly Written[])[],
  dialect: Dialect,
): Promise<Uint8Array> => (dialect.spreadsheet ? toSpreadsheet(rows, dialect) : toText(rows, dialect));

/** How a day looks in the spreadsheet; it is kept as a number whatever it looks like. */
const DAY_FORMAT = { en: 'mm/dd/yyyy', de: 'dd.mm.yyyy', fr: 'dd/mm/yyyy' } as const;

/** A date in a spreadsheet has no time zone: the writer takes the one of a Date in UTC. */
const dateOf = ({ day, minutes }: Extract<Written, { kind: 'date' }>): Date =>
  new Date(Date.UTC(day.year, day.month - 1, day.day, 0, minutes));

function toSpreadsheet(
  rows: readonly (readonly Written[])[],
  { language, due }: Dialect,
): Promise<Uint8Array> {
  const format = DAY_FORMAT[language] + (due.time === 'none' ? '' : ' hh:mm');
  const sheet = rows.map((row) =>
    row.map((cell): Cell => {
      if (cell.kind === 'number') return { value: cell.value, type: Number };
      if (cell.kind === 'date') return { value: dateOf(cell), type: Date, format };
      return cell.text === '' ? null : { value: cell.text, type: String };
    }),
  );
  return writeXlsxFile(sheet).toBuffer();
}

function toText(rows: readonly (readonly Written[])[], dialect: Dialect): Uint8Array {
  const { separator, encoding } = dialect;
  const cell = (written: Written): string => {
    if (written.kind !== 'text') throw new TypeError('a text file holds texts only');
    return written.text.includes(separator) || /["\n]/.test(written.text)
      ? `"${written.text.replaceAll('"', '""')}"`
      : written.text;
  };
  const end = `${dialect.trailing ? separator : ''}\r\n`;
  const text =
    (dialect.named ? `sep=${separator}\r\n` : '') +
    rows.map((row) => row.map(cell).join(separator) + end).join('');
  if (encoding === 'utf-16le')
    return Buffer.concat([Buffer.from([0xff, 0xfe]), Buffer.from(text, 'utf16le')]);
  if (encoding === 'windows-1252') return windows1252(text) ?? Buffer.from(text);
  return Buffer.from(encoding === 'utf-8-bom' ? `\ufeff${text}` : text);
}

/** The bytes from 0x80 to 0x9f that these files need; the others are those of Latin-1. Source: WHATWG Encoding Standard. */
const HIGH: Readonly<Record<string, number>> = { '€': 0x80, '’': 0x92, '“': 0x93, '”': 0x94, '–': 0x96 };

/** Null where the text has letters that this code page has not. */
export function windows1252(text: string): Uint8Array | null {
  const bytes = [...text].map((letter) => HIGH[letter] ?? letter.charCodeAt(0));
  return bytes.every((byte, at) => byte < 0x80 || (byte < 0x100 && (byte >= 0xa0 || text[at]! in HIGH)))
    ? Uint8Array.from(bytes)
    : null;
}
