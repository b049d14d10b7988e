import type { Page } from '@playwright/test';

/** What a person would have had to do in the window so far. */
export interface Work {
  /** Presses of a pointer's button, of whatever on. */
  clicks: number;
  /** Characters typed into fields, and every key that types none (Enter, Tab, an arrow, a shortcut). */
  typed: number;
}

/**
 * Count clicks and typed characters in a window from now on, also after it is loaded again. A field that a story fills
 * counts every character it holds more than before, or all of it where its text was replaced.
 */
export async function countWork(page: Page): Promise<Work> {
  const work: Work = { clicks: 0, typed: 0 };
  await page.exposeFunction('countedWork', (what: keyof Work, count: number) => {
    work[what] += count;
  });
  await page.addInitScript(listen);
  await page.evaluate(listen);
  return work;
}

/** Runs in the page. */
function listen(): void {
  const counted = (what: string, count: number): void =>
    (window as unknown as { countedWork: (what: string, count: number) => void }).countedWork(what, count);
  const before = new WeakMap<EventTarget, string>();
  window.addEventListener('pointerdown', () => counted('clicks', 1), true);
  window.addEventListener(
    'focusin',
    ({ target }) => {
      const isText =
        target instanceof HTMLTextAreaElement ||
        (target instanceof HTMLInputElement && target.type === 'text');
      // A date or a time is typed whole, whatever stood there.
      if (isText) before.set(target, target.value);
    },
    true,
  );
  const typed = ({ target }: Event): void => {
    const isField = target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement;
    if (!isField || ['checkbox', 'radio', 'file'].includes(target.type)) return;
    const old = before.get(target) ?? '';
    const { value } = target;
    if (value !== old) counted('typed', value.startsWith(old) ? value.length - old.length : value.length);
    before.set(target, value);
  };
  window.addEventListener('input', typed, true);
  window.addEventListener(
    'keydown',
    ({ key, ctrlKey, metaKey, altKey }) => {
      const shortcut = ctrlKey || metaKey || altKey;
      if (['Control', 'Shift', 'Alt', 'Meta'].includes(key)) return;
      if (key.length > 1 || shortcut) counted('typed', 1);
    },
    true,
  );
}
