import type { Result } from '../../core/result.ts';
import type { RowChange } from '../../core/shop/row-change.ts';

/**
 * Who comes with an older order of a queue is told what was done to it since. Kept while the app runs: a screen that read
 * the shop before a restart reads it again.
 */
export class QueueChanges {
  readonly #last = new Map<string, string>();

  /** @param words what was done, as the history names it */
  note<T extends { readonly changes: readonly RowChange[] }>(made: T, words: (made: T) => string): T {
    for (const { kind, id } of made.changes) if (kind === 'queue') this.#last.set(id, words(made));
    return made;
  }

  /** The same refusal, with what was done to each queue that stands in another order than was seen. */
  told<T>(result: Result<T>): Result<T> {
    if (result.ok) return result;
    const issues = result.issues.map((one) => {
      const words = one.conflict?.kind === 'queue' ? this.#last.get(one.conflict.id) : undefined;
      return words ? { ...one, message: one.message.replace(/\.$/, `: “${words}”.`) } : one;
    });
    return { ok: false, issues };
  }
}
