import { useEffect, useEffectEvent } from 'react';
import { keyName, keysAreTaken } from '../../ui/key-name.ts';
import type { FloorKey } from './floor-keys.ts';

/** A count takes figures only, so that letters still belong to the screen while one is being typed. */
const isLetterInCount = ({ key, target }: KeyboardEvent): boolean =>
  /^[a-z]$/i.test(key) && target instanceof HTMLElement && target.dataset.count !== undefined;

/** Carries out the floor screen's keys; one without an act now does nothing. */
export function useFloorKeys(acts: Readonly<Partial<Record<FloorKey, () => void>>>): void {
  const press = useEffectEvent((event: KeyboardEvent) => {
    if (event.defaultPrevented || (keysAreTaken(event) && !isLetterInCount(event))) return;
    const act = acts[keyName(event).replace(/^Shift\+/, '') as FloorKey];
    if (!act) return;
    event.preventDefault();
    act();
  });
  useEffect(() => {
    const listen = (event: KeyboardEvent) => press(event);
    window.addEventListener('keydown', listen);
    return () => window.removeEventListener('keydown', listen);
  }, []);
}
