import { z } from 'zod';
import { MOST } from '../input-limits.ts';
import { rowKinds } from '../shop/state.ts';
import { call } from './call.ts';

/** How the screens learn where they run, what time it is and which data file is open. */
export const appStatus = call(
  'app.status',
  z.strictObject({}),
  z.strictObject({
    host: z.enum(['desktop', 'browser']),
    version: z.string(),
    dataFile: z.string(),
    /** True until the first start has chosen the demo shop or an empty one. */
    fresh: z.boolean(),
    /** The host's clock. `fixed`: it stands still (for tests and pictures). */
    now: z.int(),
    fixedClock: z.boolean(),
    /** Sentences to show once, e.g. that rows could not be read or that no backup can be made. Null: nothing to say. */
    notice: z.string().nullable(),
  }),
);

/** First start: fill the fresh file with the demo shop, an empty one or an export. Refused when the file is not fresh. */
export const appBegin = call(
  'app.begin',
  z.discriminatedUnion('with', [
    z.strictObject({ with: z.literal('demo') }),
    z.strictObject({
      with: z.literal('empty'),
      name: z.string().trim().min(1).max(120),
      timeZone: z.string().max(100),
      units: z.enum(['in', 'mm']),
      decimals: z.enum(['point', 'comma']),
    }),
    /** An export's everything.json (core/import/whole-shop.ts), packed as gzip. */
    z.strictObject({
      with: z.literal('export'),
      fileName: z.string().max(MOST.fileNameCharacters),
      gzipBase64: z.string().max(MOST.packedCharacters),
    }),
  ]),
  z.strictObject({}),
);

/**
 * The living shop with its number: what is open and what was closed in the last days. Older work is in the archive.
 */
export const shopRead = call(
  'shop.read',
  z.strictObject({}),
  z.strictObject({
    epoch: z.string(),
    revision: z.int(),
    shop: z.strictObject({
      settings: rowKinds.settings,
      material: z.array(rowKinds.material),
      colour: z.array(rowKinds.colour),
      sheet: z.array(rowKinds.sheet),
      part: z.array(rowKinds.part),
      calendar: z.array(rowKinds.calendar),
      machine: z.array(rowKinds.machine),
      tool: z.array(rowKinds.tool),
      downtime: z.array(rowKinds.downtime),
      absence: z.array(rowKinds.absence),
      order: z.array(rowKinds.order),
      line: z.array(rowKinds.line),
      queue: z.array(rowKinds.queue),
      published: z.array(rowKinds.published),
      pin: z.array(rowKinds.pin),
      changeover: z.array(rowKinds.changeover),
      /** Of these lines, and what each machine finished last. */
      record: z.array(rowKinds.record),
      learned: z.array(rowKinds.learned),
      /** The newest only. */
      movement: z.array(rowKinds.movement),
      cutList: z.array(rowKinds.cutList),
      cutCount: z.array(rowKinds.cutCount),
      keptList: z.array(rowKinds.keptList),
      delivery: z.array(rowKinds.delivery),
      otherName: z.array(rowKinds.otherName),
      fileLayout: z.array(rowKinds.fileLayout),
    }),
  }),
);

/** Finished operations, newest first. */
export const recordsRead = call(
  'records.read',
  z.strictObject({ before: z.int().nullable(), limit: z.int().min(1).max(5000) }),
  z.strictObject({ records: z.array(rowKinds.record), total: z.int() }),
);
