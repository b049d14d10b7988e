import { keyName, keysAreTaken } from '../../ui/key-name.ts';
import type { FloorKey } from './floor-keys.ts';
import { useKeyPresses } from '../../ui/use-key-presses.ts';

/** A count takes figures only, so that letters still belong to the screen while one is being typed. */
const isLetterInCount = ({ key, target }: KeyboardEvent): boolean =>
  /^[a-z]$/i.test(key) && target instanceof HTMLElement && target.dataset.count !== undefined;

/** Carries out the floor screen's keys; one without an act now does nothing. */
export function useFloorKeys(acts: Readonly<Partial<Record<FloorKey, () => void>>>): void {
  useKeyPresses((event) => {
    if (keysAreTaken(event) && !isLetterInCount(event)) return;
    const act = acts[keyName(event).replace(/^Shift\+/, '') as FloorKey];
    if (!act) return;
    event.preventDefault();
    act();
  });
}
