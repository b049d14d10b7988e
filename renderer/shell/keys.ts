import { useEffect, useEffectEvent } from 'react';
import { keyName, keysAreTaken } from '../ui/key-name.ts';
import type { Action } from './actions.ts';

/** Keys that work on every screen. A field being typed in, or a dialog, keeps its keys. */
export function useKeys(actions: readonly Action[]): void {
  const press = useEffectEvent((event: KeyboardEvent) => {
    if (event.defaultPrevented || keysAreTaken(event)) return;
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
