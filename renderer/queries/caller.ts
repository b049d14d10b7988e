/** Stored under this name in the window's or browser's own storage. */
const STORED_AS = 'foldweek.caller';

/**
 * What this window calls itself when it asks the host for something: what is done here can be undone here, and nowhere
 * else. Kept, so that undo works after a restart.
 */
export function caller(): string {
  const known = localStorage.getItem(STORED_AS);
  if (known) return known;
  const fresh = `desk ${Math.random().toString(36).slice(2, 8)}`;
  localStorage.setItem(STORED_AS, fresh);
  return fresh;
}
