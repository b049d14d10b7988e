import { useSyncExternalStore } from 'react';

/** A text kept in this window or browser only, under a name; null: none. */
export interface Kept {
  read(): string | null;
  write(text: string | null): void;
  use(): string | null;
}

export function kept(storedAs: string): Kept {
  const listeners = new Set<() => void>();
  const read = () => localStorage.getItem(storedAs);
  const subscribe = (listener: () => void) => {
    listeners.add(listener);
    return () => listeners.delete(listener);
  };
  return {
    read,
    write(text) {
      if (text === null) localStorage.removeItem(storedAs);
      else localStorage.setItem(storedAs, text);
      listeners.forEach((listener) => listener());
    },
    use: () => useSyncExternalStore(subscribe, read),
  };
}

/** The machine whose floor screen this is. */
export const keptMachine = kept('foldweek.floor.machine');
