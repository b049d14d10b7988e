import { wildText, type Draw } from './wild.ts';

type Change = (text: string, draw: Draw) => string | Uint8Array;

const insert = (text: string, at: number, what: string): string => text.slice(0, at) + what + text.slice(at);
const linesOf = (text: string): string[] => text.split('\n');
const swapBytes = (text: string): Uint8Array => Buffer.from(`\ufeff${text}`, 'utf16le').swap16();

/** A cell of the text by its separator, replaced. */
function replaceCell(text: string, draw: Draw): string {
  const lines = linesOf(text);
  const at = draw.below(lines.length);
  const cells = (lines[at] ?? '').split(',');
  cells[draw.below(cells.length)] = wildText(draw);
  lines[at] = cells.join(',');
  return lines.join('\n');
}

/** Files as they come from a broken export, a wrong program or a bad copy. */
const changes: readonly Change[] = [
  (text, draw) => Buffer.from(text).subarray(0, draw.below(text.length)),
  (text, draw) => flipped(Buffer.from(text), draw),
  (text) => Buffer.from(text, 'utf16le'),
  (text) => Buffer.from(`\ufeff${text}`, 'utf16le'),
  swapBytes,
  (text) => Buffer.from(`${text}\nÄÖÜ,é`, 'latin1'),
  (text) => `\ufeff\ufeff${text}`,
  (text, draw) => insert(text, draw.below(text.length), wildText(draw)),
  (text, draw) => insert(text, draw.below(text.length), '"'),
  (text, draw) => insert(text, draw.below(text.length), '\0'),
  (text, draw) => insert(text, draw.below(text.length), ','.repeat(draw.of([1, 3, 100, 100_000]))),
  (text, draw) =>
    text +
    (linesOf(text).at(-1) ?? '')
      .slice(0, 500)
      .concat('\n')
      .repeat(draw.of([2, 6000])),
  (text) => `${linesOf(text)[0]},${text}`,
  (text, draw) =>
    linesOf(text)
      .filter(() => draw.chance(70))
      .join('\n'),
  (text, draw) =>
    linesOf(text)
      .map((line) => line.split(',').slice(draw.below(2)).join(','))
      .join('\n'),
  (text, draw) => text.replaceAll(',', draw.of([';', '\t', '|', ',,', '","'])),
  (text, draw) => text.replaceAll('\n', draw.of(['\r', '\r\n', '\n\n', '\u2028'])),
  (text, draw) => text + '\n'.repeat(draw.of([1, 1000, 1_000_000])),
  replaceCell,
  replaceCell,
  replaceCell,
];

function flipped(bytes: Buffer, draw: Draw): Buffer {
  for (let times = 1 + draw.below(8); times > 0 && bytes.length > 0; times--) {
    const at = draw.below(bytes.length);
    bytes[at] = (bytes[at] ?? 0) ^ (1 << draw.below(8));
  }
  return bytes;
}

/** A file's text with one or two of these done to it; now and then as it was. */
export function mutateBytes(text: string, draw: Draw): Uint8Array {
  if (draw.chance(5)) return Buffer.from(text);
  const first = draw.of(changes)(text, draw);
  if (typeof first !== 'string') return first;
  const second = draw.chance(40) ? draw.of(changes)(first, draw) : first;
  return Buffer.from(second);
}
