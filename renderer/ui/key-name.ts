const ARROWS: Readonly<Record<string, string>> = {
  ArrowLeft: '←',
  ArrowRight: '→',
  ArrowUp: '↑',
  ArrowDown: '↓',
  ' ': 'Space',
};

/** What a key press is called in the lists of keys: "Ctrl+Shift+Z", "Alt+←", "?". Cmd counts as Ctrl. */
export function keyName({ key, ctrlKey, metaKey, shiftKey, altKey }: KeyboardEvent): string {
  const letter = /^[a-z]$/i.test(key);
  const parts = [
    (ctrlKey || metaKey) && 'Ctrl',
    altKey && 'Alt',
    shiftKey && (letter || key.length > 1) && 'Shift',
    letter ? key.toUpperCase() : (ARROWS[key] ?? key),
  ];
  return parts.filter(Boolean).join('+');
}

/** True while keys belong to a field being typed in, or to a dialog. */
export const keysAreTaken = ({ target }: KeyboardEvent): boolean =>
  (target instanceof HTMLElement &&
    (target.isContentEditable || ['INPUT', 'TEXTAREA', 'SELECT'].includes(target.tagName))) ||
  document.querySelector('[role=dialog], [role=menu]') !== null;
