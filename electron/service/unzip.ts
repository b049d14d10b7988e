import { inflateRawSync } from 'node:zlib';
import { MOST } from '../../core/input-limits.ts';

/** A spreadsheet's parts, by name. */
export type Parts = ReadonlyMap<string, Uint8Array>;

/** What is wrong with a packed file, as the end of a sentence. */
export class BadZip extends Error {}

/** Signatures and sizes of the records. Source: PKWARE APPNOTE.TXT 6.3.10, sections 4.3.7, 4.3.12, 4.3.16. */
const LOCAL = { mark: 0x04034b50, bytes: 30 } as const;
const CENTRAL = { mark: 0x02014b50, bytes: 46 } as const;
const END = { mark: 0x06054b50, bytes: 22, comment: 65_535 } as const;

/**
 * Unpacks a ZIP file part by part and stops as soon as all together are larger than is allowed, whatever sizes the file
 * claims (a few kilobytes can claim and become gigabytes).
 * @throws BadZip
 */
export function unzip(bytes: Uint8Array): Parts {
  const file = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const parts = new Map<string, Uint8Array>();
  let left: number = MOST.spreadsheetBytes;
  try {
    for (const entry of entriesOf(file)) {
      if (!/\.(?:xml|rels)$/.test(entry.name)) continue;
      const part = unpack(file, entry, left);
      left -= part.length;
      parts.set(entry.name, part);
    }
  } catch (error) {
    if (error instanceof BadZip) throw error;
    if ((error as NodeJS.ErrnoException).code === 'ERR_BUFFER_TOO_LARGE')
      throw new BadZip('is larger than can be read once it is unpacked');
    throw new BadZip('is damaged');
  }
  return parts;
}

interface Entry {
  readonly name: string;
  readonly method: number;
  readonly packedBytes: number;
  readonly at: number;
}

function* entriesOf(file: Buffer): Generator<Entry> {
  const end = endOf(file);
  const count = file.readUInt16LE(end + 10);
  if (count > MOST.spreadsheetParts) throw new BadZip('holds too many parts');
  let at = file.readUInt32LE(end + 16);
  for (let k = 0; k < count; k++) {
    if (file.readUInt32LE(at) !== CENTRAL.mark) throw new BadZip('is damaged');
    if ((file.readUInt16LE(at + 8) & 1) === 1) throw new BadZip('is locked with a password');
    const [name, extra, comment] = [28, 30, 32].map((field) => file.readUInt16LE(at + field)) as [
      number,
      number,
      number,
    ];
    yield {
      name: file.toString('utf8', at + CENTRAL.bytes, at + CENTRAL.bytes + name),
      method: file.readUInt16LE(at + 10),
      packedBytes: file.readUInt32LE(at + 20),
      at: file.readUInt32LE(at + 42),
    };
    at += CENTRAL.bytes + name + extra + comment;
  }
}

/** Where the record at the end begins; a comment may stand behind it. */
function endOf(file: Buffer): number {
  const first = Math.max(0, file.length - END.bytes - END.comment);
  for (let at = file.length - END.bytes; at >= first; at--) if (file.readUInt32LE(at) === END.mark) return at;
  throw new BadZip('is damaged');
}

function unpack(file: Buffer, { method, packedBytes, at }: Entry, most: number): Uint8Array {
  if (file.readUInt32LE(at) !== LOCAL.mark) throw new BadZip('is damaged');
  const start = at + LOCAL.bytes + file.readUInt16LE(at + 26) + file.readUInt16LE(at + 28);
  const packed = file.subarray(start, start + packedBytes);
  if (method === 8) return inflateRawSync(packed, { maxOutputLength: Math.max(1, most) });
  if (method !== 0) throw new BadZip('is packed in a way that cannot be read');
  if (packed.length > most) throw new BadZip('is larger than can be read once it is unpacked');
  return packed;
}

/** The parts packed again without compression, for a reader that takes a ZIP file: it has nothing left to unpack. */
export function stored(parts: Parts): ArrayBuffer {
  const locals: Buffer[] = [];
  const centrals: Buffer[] = [];
  let at = 0;
  for (const [name, part] of parts) {
    const text = Buffer.from(name, 'utf8');
    const local = Buffer.alloc(LOCAL.bytes);
    local.writeUInt32LE(LOCAL.mark, 0);
    const central = Buffer.alloc(CENTRAL.bytes);
    central.writeUInt32LE(CENTRAL.mark, 0);
    for (const [header, sizes, length] of [
      [local, 18, 26],
      [central, 20, 28],
    ] as const) {
      header.writeUInt32LE(part.length, sizes);
      header.writeUInt32LE(part.length, sizes + 4);
      header.writeUInt16LE(text.length, length);
    }
    central.writeUInt32LE(at, 42);
    locals.push(local, text, Buffer.from(part.buffer, part.byteOffset, part.byteLength));
    centrals.push(central, text);
    at += LOCAL.bytes + text.length + part.length;
  }
  const directory = Buffer.concat(centrals);
  const end = Buffer.alloc(END.bytes);
  end.writeUInt32LE(END.mark, 0);
  end.writeUInt16LE(parts.size, 8);
  end.writeUInt16LE(parts.size, 10);
  end.writeUInt32LE(directory.length, 12);
  end.writeUInt32LE(at, 16);
  const whole = Buffer.concat([...locals, directory, end]);
  return whole.buffer.slice(whole.byteOffset, whole.byteOffset + whole.byteLength) as ArrayBuffer;
}
