import { randomUUID } from 'node:crypto';
import { withChanges, type RowChange } from '../../core/shop/row-change.ts';
import type { Shop } from '../../core/shop/state.ts';
import type { Store, Work } from '../db/open.ts';
import { Refused } from '../refused.ts';
import type { Clock } from './clock.ts';
import type { Pushes } from './pushes.ts';
import { isLiving, readShop } from './shop.ts';

const DAY = 86_400;

/**
 * The shop as the host holds it: one value, never changed, with a number that grows with each change. What was written to
 * the data file moves the value on and goes to every screen with that number, so nobody reads everything again. What a
 * command costs depends on the work that is open, not on the years in the file.
 */
export class LivingShop {
  /** Names this start of the host: numbers of another start mean nothing. */
  readonly epoch = randomUUID();
  readonly store: Store;
  readonly #clock: Clock;
  readonly #pushes: Pushes;
  #revision = 1;
  #shop: Shop | null = null;
  #day = 0;

  constructor(store: Store, clock: Clock, pushes: Pushes) {
    this.store = store;
    this.#clock = clock;
    this.#pushes = pushes;
  }

  /** The shop as it is. @throws Refused while the file is fresh */
  get shop(): Shop {
    const day = Math.floor(this.#clock.now() / DAY);
    if (this.#shop && day === this.#day) return this.#shop;
    const before = this.#shop;
    // A day has gone by: what was closed long enough ago goes to the archive.
    const shop = this.store.run('read the shop', (work) => readShop(work, this.#clock.now()));
    this.#shop = shop;
    this.#day = day;
    if (before) this.#tell(null);
    return shop;
  }

  get revision(): number {
    return this.#revision;
  }

  /** With its number, for a screen that begins or has missed a change. @throws Refused while the file is fresh */
  read(): { epoch: string; revision: number; shop: Shop } {
    const { shop } = this;
    return { epoch: this.epoch, revision: this.#revision, shop };
  }

  /**
   * Write changes in one transaction, then move on by them and tell the screens.
   * @param make says what changes, and may write its entry in the history; nothing is kept when it throws
   */
  change<T extends { readonly changes: readonly RowChange[] }>(
    what: string,
    make: (work: Work, shop: Shop) => T,
  ): T {
    const before = this.shop;
    const made = this.store.run(what, (work) => {
      const result = make(work, before);
      for (const { kind, id, after } of result.changes)
        if (after) work.rows.put(kind, after as never);
        else work.rows.remove(kind, id);
      return result;
    });
    if (made.changes.length === 0) return made;
    // An archived row that comes back brings others along: its lines, its records.
    if (made.changes.some((one) => touchesArchive(one, before, this.#clock.now()))) this.reload();
    else {
      this.#shop = withChanges(before, made.changes);
      this.#tell(made.changes);
    }
    return made;
  }

  /** The file holds another shop, or other rows, than it did: read it again, and let the screens do so. */
  reload(): void {
    this.#shop = null;
    this.#tell(null);
  }

  #tell(changes: readonly RowChange[] | null): void {
    this.#revision += 1;
    this.#pushes.send({ kind: 'changes', epoch: this.epoch, revision: this.#revision, changes });
  }
}

function touchesArchive({ kind, before, after }: RowChange, shop: Shop, now: number): boolean {
  if (kind !== 'order' || before === null || after === null) return false;
  const known = shop.order.some(({ id }) => id === before.id);
  return !known && isLiving(after, now);
}

/** @throws Refused when a command makes an order or a line under a number that was used before, in the archive perhaps */
export function refuseUsedNumbers({ rows }: Work, changes: readonly RowChange[]): void {
  for (const { kind, id, before, after } of changes) {
    if (before !== null || after === null || (kind !== 'order' && kind !== 'line')) continue;
    const what = kind === 'order' ? `Work order ${id}` : `Line ${id}`;
    if (rows.get(kind, id))
      throw new Refused(
        'refused',
        `${what} was used before; it is in the archive. Nothing was changed; give this one another number.`,
      );
    if (kind === 'line' && rows.hasRecords(id))
      throw new Refused(
        'refused',
        `${what} has finished work on record, of a line that was removed or came from a file. Nothing was changed; give this one another number.`,
      );
  }
}
