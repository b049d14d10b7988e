import { err, issue, type Issue, type Result } from '../result.ts';
import type { RowKind, RowOf } from '../shop/state.ts';

/** A row as it was read and changed; a new one has revision 0, which no row that a command made has. */
type Read = { readonly id: string; readonly revision: number };

/**
 * What speaks against saving a row that someone else changed since it was read: their change is kept, and the issue holds
 * both versions.
 * @param current the row as it stands; null: there is none
 * @param saved the row with the revision that was read; `removed` where it is to go
 */
export function staleIssue<K extends RowKind>(
  kind: K,
  subject: string,
  current: RowOf<K> | null,
  saved: RowOf<K> | (Read & { readonly removed: true }),
): Issue | null {
  if (current === null ? saved.revision === 0 : saved.revision === current.revision) return null;
  const message =
    current === null
      ? `The ${subject} was removed meanwhile.`
      : saved.revision === 0
        ? `The ${subject} was added or changed meanwhile.`
        : `The ${subject} was changed meanwhile.`;
  const advice = 'Your entries are still on the form: look at the new version, then save again.';
  const mine = 'removed' in saved ? null : saved;
  return {
    ...issue(subject, 'revision', message, advice),
    conflict: { kind, id: saved.id, mine, theirs: current },
  };
}

export function refuseStale<K extends RowKind>(
  kind: K,
  subject: string,
  current: RowOf<K> | null,
  saved: RowOf<K>,
): Result<never> | null {
  const stale = staleIssue(kind, subject, current, saved);
  return stale && err(stale);
}
