import { useEffect, useEffectEvent } from 'react';

/** Hears every key pressed in the window that nothing has acted on yet, as long as the component is drawn. */
export function useKeyPresses(onPress: (event: KeyboardEvent) => void): void {
  const press = useEffectEvent((event: KeyboardEvent) => {
    if (!event.defaultPrevented) onPress(event);
  });
  useEffect(() => {
    const listen = (event: KeyboardEvent) => press(event);
    window.addEventListener('keydown', listen);
    return () => window.removeEventListener('keydown', listen);
  }, []);
}
