import { create } from 'zustand';
import { withoutKey } from './list.ts';

/**
 * Entries that are not saved yet, by form ("part ridge-cap"). They outlive the form: looking at another row, another
 * screen or a refused save loses nothing. Gone when the window closes.
 */
interface Drafts {
  readonly entries: Readonly<Record<string, unknown>>;
  keep(form: string, entries: unknown): void;
  drop(form: string): void;
}

export const useDrafts = create<Drafts>((set) => ({
  entries: {},
  keep: (form, entries) => set((state) => ({ entries: { ...state.entries, [form]: entries } })),
  drop: (form) => set((state) => ({ entries: withoutKey(state.entries, form) })),
}));

export interface Draft<T> {
  readonly entries: T;
  /** Something was typed that is not saved. */
  readonly changed: boolean;
  set(patch: Partial<T>): void;
  drop(): void;
}

/** The unsaved entries of a form, or the row as it is when nothing was typed. */
export function useDraft<T extends object>(form: string, current: T): Draft<T> {
  const kept = useDrafts((state) => state.entries[form]) as T | undefined;
  const keep = useDrafts((state) => state.keep);
  const drop = useDrafts((state) => state.drop);
  const entries = kept ?? current;
  return {
    entries,
    changed: kept !== undefined,
    set: (patch) => keep(form, { ...entries, ...patch }),
    drop: () => drop(form),
  };
}
