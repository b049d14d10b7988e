import { useEffect, useEffectEvent } from 'react';
import type { Action } from './actions.ts';

/** What a key press is called in the lists of keys: "Ctrl+Shift+Z", "P", "?". Cmd counts as Ctrl. */
export function keyName({ key, ctrlKey, metaKey, shiftKey, altKey }: KeyboardEvent): string {
  const letter = /^[a-z]$/i.test(key);
  const parts = [
    (ctrlKey || metaKey) && 'Ctrl',
    altKey && 'Alt',
    shiftKey && (letter || key.length > 1) && 'Shift',
    letter ? key.toUpperCase() : key,
  ];
  return parts.filter(Boolean).join('+');
}

/** True while letters belong to a field. */
const isTyping = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  (target.isContentEditable || ['INPUT', 'TEXTAREA', 'SELECT'].includes(target.tagName));

/** Keys that work on every screen. A field being typed in, or a dialog, keeps its keys. */
export function useKeys(actions: readonly Action[]): void {
  const press = useEffectEvent((event: KeyboardEvent) => {
    if (event.defaultPrevented || isTyping(event.target) || document.querySelector('[role=dialog]')) return;
    const name = keyName(event);
    const action = actions.find(({ keys, disabled }) => keys === name && !disabled);
    if (!action) return;
    event.preventDefault();
    action.act();
  });
  useEffect(() => {
    const listen = (event: KeyboardEvent) => press(event);
    window.addEventListener('keydown', listen);
    return () => window.removeEventListener('keydown', listen);
  }, []);
}
