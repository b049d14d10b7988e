import { create } from 'zustand';
import { withoutKey } from './list.ts';

/**
 * Entries that are not saved yet, by form ("part ridge-cap"). They outlive the form: looking at another row, another
 * screen, a refused save or closing the window loses nothing. Kept in this window's or browser's own storage until they
 * are saved or thrown away, and the same in every tab of it.
 */
interface Drafts {
  readonly entries: Readonly<Record<string, unknown>>;
  keep(form: string, entries: unknown): void;
  drop(form: string): void;
}

/** Each draft under its form's name after this. The figure grows when forms change what they hold: older drafts do not fit. */
const STORED_AS = 'foldweek.draft.1 ';

export const useDrafts = create<Drafts>((set) => ({
  entries: storedDrafts(),
  keep: (form, entries) => {
    store(form, entries);
    set((state) => ({ entries: { ...state.entries, [form]: entries } }));
  },
  drop: (form) => {
    localStorage.removeItem(STORED_AS + form);
    set((state) => ({ entries: withoutKey(state.entries, form) }));
  },
}));

/** What another tab keeps or throws away holds here too. */
window.addEventListener('storage', ({ key, newValue }) => {
  if (!key?.startsWith(STORED_AS)) return;
  const form = key.slice(STORED_AS.length);
  const entries = newValue === null ? undefined : read(newValue);
  useDrafts.setState((state) => ({
    entries: entries === undefined ? withoutKey(state.entries, form) : { ...state.entries, [form]: entries },
  }));
});

function storedDrafts(): Record<string, unknown> {
  const names = Object.keys(localStorage).filter((name) => name.startsWith(STORED_AS));
  const drafts = names.map((name) => [name.slice(STORED_AS.length), read(localStorage.getItem(name) ?? '')]);
  return Object.fromEntries(drafts.filter(([, entries]) => entries !== undefined));
}

/** A figure that is still to be typed is NaN in a form, which JSON does not know. */
const TO_BE_TYPED = { stillToBeTyped: true } as const;

/** A full storage keeps it while the window is open. */
function store(form: string, entries: unknown): void {
  const text = JSON.stringify(entries, (_, value: unknown) => (Number.isNaN(value) ? TO_BE_TYPED : value));
  try {
    localStorage.setItem(STORED_AS + form, text);
  } catch {
    localStorage.removeItem(STORED_AS + form);
  }
}

/** @returns undefined for text that is no draft */
function read(text: string): unknown {
  try {
    return JSON.parse(text, (_, value: unknown) =>
      value !== null && typeof value === 'object' && 'stillToBeTyped' in value ? NaN : value,
    );
  } catch {
    return undefined;
  }
}

export interface Draft<T> {
  readonly entries: T;
  /** Something was typed that is not saved. */
  readonly changed: boolean;
  set(patch: Partial<T>): void;
  drop(): void;
}

/**
 * The unsaved entries of a form, or the row as it is when nothing was typed.
 * @param complete gives entries that an earlier version kept what they lack within their fields
 */
export function useDraft<T extends object>(
  form: string,
  current: T,
  complete: (kept: T) => T = (kept) => kept,
): Draft<T> {
  const stored = useDrafts((state) => state.entries[form]) as T | undefined;
  const keep = useDrafts((state) => state.keep);
  const drop = useDrafts((state) => state.drop);
  const kept = stored && complete(withFieldsOf(current, stored));
  const entries = kept ?? current;
  return {
    entries,
    changed: kept !== undefined,
    set: (patch) => keep(form, { ...entries, ...patch }),
    drop: () => drop(form),
  };
}

/** What an earlier version kept, with the fields that its form did not have yet as the row has them. */
const withFieldsOf = <T extends object>(current: T, kept: T): T =>
  Object.keys(current).every((field) => field in kept) ? kept : { ...current, ...kept };
