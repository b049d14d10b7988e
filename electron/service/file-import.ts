import type { Answers } from '../../core/import/answers.ts';
import { importKinds, type ImportKindName } from '../../core/import/kinds.ts';
import { readFile, type FileRead } from '../../core/import/read-file.ts';
import type { Reading } from '../../core/import/reading.ts';
import type { Grid } from '../../core/import/grid.ts';
import type { Clock } from './clock.ts';
import type { EditService } from './edit.ts';
import type { LivingShop } from './living-shop.ts';
import { readGrid } from './table-file.ts';

/** A file as it comes with a request. */
export interface FileAsked {
  readonly kind: ImportKindName;
  readonly fileName: string;
  readonly bytes: Uint8Array;
  readonly answers: Answers;
}

/** What of a file was taken, and what is left of it. */
export interface FileTaken {
  readonly stepId: number | null;
  readonly factId: number | null;
  readonly label: string;
  readonly counts: { readonly new: number; readonly changed: number };
  /** New lines of work orders that are marked rush. */
  readonly rush: string[];
  readonly left: Reading;
}

/** Files of a shop: read as often as it takes, taken as one step. Nothing is kept between two readings. */
export function fileImport(living: LivingShop, clock: Clock, edit: EditService) {
  const reading = (grid: Grid, { kind, fileName, answers }: FileAsked): FileRead => {
    const { shop } = living;
    const orders = new Set(shop.order.map(({ id }) => id));
    return living.store.run('read a file', ({ rows }) =>
      readFile(importKinds[kind], {
        shop,
        fileName,
        grid,
        answers,
        now: clock.now(),
        past: {
          order: (id) => !orders.has(id) && rows.get('order', id) !== null,
          line: (id) => rows.hasRecords(id),
          record: (id) => rows.get('record', id),
        },
      }),
    );
  };
  const gridOf = ({ fileName, bytes, answers }: FileAsked) => readGrid(fileName, bytes, answers.sheet);

  return {
    /** How a file is understood; nothing is stored. */
    read: async (asked: FileAsked): Promise<Reading> => reading(await gridOf(asked), asked).reading,

    /** Take the rows that are new or change something; the others come back. */
    async take(asked: FileAsked, by = ''): Promise<FileTaken> {
      const grid = await gridOf(asked);
      const { reading: found, command } = reading(grid, asked);
      const before = new Set(living.shop.line.map(({ id }) => id));
      const applied = command ? edit.apply(command, by) : null;
      return {
        stepId: applied?.stepId ?? null,
        factId: applied?.factId ?? null,
        label: applied?.label ?? '',
        counts: { new: found.counts.new, changed: found.counts.changed },
        rush: rushLines(living.shop, before),
        left: reading(grid, asked).reading,
      };
    },
  };
}

function rushLines({ order, line }: LivingShop['shop'], before: ReadonlySet<string>): string[] {
  const urgent = new Set(order.filter(({ rush }) => rush).map(({ id }) => id));
  return line.filter(({ id, orderId }) => !before.has(id) && urgent.has(orderId)).map(({ id }) => id);
}
