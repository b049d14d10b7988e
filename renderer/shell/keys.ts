import { keyName, keysAreTaken } from '../ui/key-name.ts';
import type { Action } from './actions.ts';
import { useKeyPresses } from '../ui/use-key-presses.ts';

/** Keys that work on every screen. A field being typed in, or a dialog, keeps its keys. */
export function useKeys(actions: readonly Action[]): void {
  useKeyPresses((event) => {
    if (keysAreTaken(event)) return;
    const name = keyName(event);
    const action = actions.find(({ keys, disabled }) => keys === name && !disabled);
    if (!action) return;
    event.preventDefault();
    action.act();
  });
}
