import { useEffect, useEffectEvent } from 'react';

/** 1, 2, 3 take what stands first, second, third in the dialog that is open; a field being typed in keeps its keys. */
export function useChoiceKeys(choices: readonly (() => void)[]): void {
  const press = useEffectEvent((event: KeyboardEvent) => {
    const { target, key, ctrlKey, metaKey, altKey } = event;
    const typing = target instanceof HTMLElement && ['INPUT', 'TEXTAREA'].includes(target.tagName);
    if (event.defaultPrevented || typing || ctrlKey || metaKey || altKey) return;
    const choose = /^[1-9]$/.test(key) ? choices[Number(key) - 1] : undefined;
    if (!choose) return;
    event.preventDefault();
    choose();
  });
  useEffect(() => {
    const listen = (event: KeyboardEvent) => press(event);
    window.addEventListener('keydown', listen);
    return () => window.removeEventListener('keydown', listen);
  }, []);
}
