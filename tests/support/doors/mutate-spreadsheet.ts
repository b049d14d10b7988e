import { deflateRawSync } from 'node:zlib';
import Papa from 'papaparse';
import writeXlsxFile, { type Cell } from 'write-excel-file/node';
import { stored, unzip } from '../../../electron/service/unzip.ts';
import { mutateBytes } from './mutate-bytes.ts';
import { wildText, type Draw } from './wild.ts';

const made = new Map<string, Promise<Uint8Array>>();

/** A CSV file's cells as a spreadsheet, figures as numbers. */
export function spreadsheetOf(csv: string): Promise<Uint8Array> {
  const known = made.get(csv) ?? makeSpreadsheet(csv);
  made.set(csv, known);
  return known;
}

function makeSpreadsheet(csv: string): Promise<Uint8Array> {
  const { data } = Papa.parse<string[]>(csv);
  const rows = data.map((cells) =>
    cells.map((text): Cell => {
      if (text === '') return null;
      return /^\d+(?:\.\d+)?$/.test(text)
        ? { value: Number(text), type: Number }
        : { value: text, type: String };
    }),
  );
  return writeXlsxFile(rows).toBuffer();
}

type Change = (bytes: Uint8Array, draw: Draw) => Uint8Array;

const SHEET = 'xl/worksheets/sheet1.xml';

/** One of its parts as text, changed, and all packed again. */
const inPart =
  (name: string, change: (text: string, draw: Draw) => string): Change =>
  (bytes, draw) => {
    const parts = new Map(unzip(bytes));
    const text = Buffer.from(parts.get(name) ?? []).toString('utf8');
    return new Uint8Array(stored(parts.set(name, Buffer.from(change(text, draw)))));
  };

/** A small file that is large once it is unpacked, whatever size it claims. */
const bomb: Change = (bytes, draw) => {
  const parts = new Map(unzip(bytes));
  const packed = deflateRawSync(Buffer.alloc(draw.of([30_000_000, 200_000_000]), 0x20));
  parts.set(SHEET, packed);
  const file = Buffer.from(stored(parts));
  // The part is said to be packed: in both of its headers.
  for (const [mark, method, name] of [
    ['PK\u0003\u0004', 8, 30],
    ['PK\u0001\u0002', 10, 46],
  ] as const)
    for (let at = file.indexOf(mark); at >= 0; at = file.indexOf(mark, at + 4))
      if (file.toString('latin1', at + name, at + name + SHEET.length) === SHEET)
        file.writeUInt16LE(8, at + method);
  return file;
};

const changes: readonly Change[] = [
  (bytes) => bytes,
  (bytes, draw) => bytes.subarray(0, draw.below(bytes.length)),
  (bytes, draw) => {
    const broken = Uint8Array.from(bytes);
    for (let times = 1 + draw.below(8); times > 0; times--) {
      const at = draw.below(broken.length);
      broken[at] = (broken[at] ?? 0) ^ (1 << draw.below(8));
    }
    return broken;
  },
  inPart(SHEET, (text, draw) => Buffer.from(mutateBytes(text, draw)).toString('utf8')),
  inPart('xl/sharedStrings.xml', (text, draw) => Buffer.from(mutateBytes(text, draw)).toString('utf8')),
  inPart(SHEET, (text, draw) =>
    text.replace(/r="B2"/, `r="${draw.of(['XFD1048576', 'A9999999', 'B', '', wildText(draw)])}"`),
  ),
  inPart(SHEET, (text, draw) =>
    text.replace(/<v>[^<]*<\/v>/, `<v>${draw.of(['1e308', 'NaN', '-1', '99999999', ''])}</v>`),
  ),
  bomb,
];

/** A spreadsheet as it comes from a bad copy, a wrong program, or somebody who means no good. */
export const mutateSpreadsheet = (bytes: Uint8Array, draw: Draw): Uint8Array => draw.of(changes)(bytes, draw);
