import { useEffect, useState, type ReactNode } from 'react';

/** A second tap of a hand that meant one comes within this. */
const SETTLE_MS = 600;

/**
 * Controls that take each other's place. For a moment after they changed nothing there can be pressed, so that a second
 * tap, or one already on its way, never reports what nobody meant.
 * @param state names what stands there; another name is a change
 */
export function Settled({ state, children }: { state: string; children: ReactNode }) {
  const [settled, setSettled] = useState<string | null>(null);
  useEffect(() => {
    const timer = setTimeout(() => setSettled(state), SETTLE_MS);
    return () => clearTimeout(timer);
  }, [state]);
  return <div inert={settled !== state}>{children}</div>;
}
