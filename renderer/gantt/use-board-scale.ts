import { useEffect, useEffectEvent, useMemo, type RefObject } from 'react';
import type { Interval } from '../../core/time/interval.ts';
import { findBar } from './drop.ts';
import type { Lane } from './lanes.ts';
import { barId } from './options-layer.tsx';
import { fitted, kept, panned, revealing, spanOf, zoomed, type Scale } from './scale.ts';
import { useBoardView } from './view.ts';
import { HOUR } from '../../core/units/duration.ts';

/** What the board shows first: a shift, beginning a little before the present. */
const FIRST_LOOK = { before: HOUR, after: 11 * HOUR };
const WHEEL_ZOOM = 0.0018;

/** The board's window on time: kept while other screens are open, always inside the horizon and as wide as the board is. */
export function useBoardScale(width: number, horizon: Interval, now: number) {
  const { scale: stored, look: store } = useBoardView();
  const scale = useMemo((): Scale | null => {
    if (width === 0) return null;
    const wanted = stored
      ? { ...stored, width }
      : fitted(now - FIRST_LOOK.before, now + FIRST_LOOK.after, width);
    return kept(wanted, horizon.start, horizon.end);
  }, [stored, width, horizon, now]);
  useEffect(() => {
    if (scale && !stored) store(scale);
  }, [scale, stored, store]);

  const look = (next: Scale) => store(kept(next, horizon.start, horizon.end));
  return {
    scale,
    look,
    /** From the present (or the first started work) to the last end or due date. */
    fit: (whole: Interval) => look(fitted(whole.start, whole.end, width)),
    goToNow: () => scale && look({ ...scale, from: now - spanOf(scale) * 0.1 }),
  };
}

/**
 * Wheel: along the time; with Ctrl (or a pinch): closer or farther around the pointer. Where the lanes are more than the
 * window is high, a plain turn scrolls them and Shift goes along the time.
 */
export function useWheel(
  of: RefObject<HTMLElement | null>,
  scale: Scale | null,
  look: (scale: Scale) => void,
): void {
  const turn = useEffectEvent((event: WheelEvent) => {
    const lanes = of.current?.parentElement;
    if (!scale || !of.current || !lanes) return;
    const closer = event.ctrlKey || event.metaKey;
    const along =
      event.deltaX || (event.shiftKey || lanes.scrollHeight <= lanes.clientHeight ? event.deltaY : 0);
    if (!closer && along === 0) return;
    event.preventDefault();
    const x = event.clientX - of.current.getBoundingClientRect().left;
    look(closer ? zoomed(scale, Math.exp(-event.deltaY * WHEEL_ZOOM), x) : panned(scale, along));
  });
  useEffect(() => {
    const element = of.current;
    if (!element) return;
    const listen = (event: WheelEvent) => turn(event);
    element.addEventListener('wheel', listen, { passive: false });
    return () => element.removeEventListener('wheel', listen);
  }, [of]);
}

/** Bring a newly selected operation into sight, wherever it was selected. */
export function useReveal(
  lanes: readonly Lane[],
  selected: string | null,
  scale: Scale | null,
  look: (scale: Scale) => void,
): void {
  const reveal = useEffectEvent((operation: string | null) => {
    const found = findBar(lanes, operation);
    if (!scale || !found) return;
    look(revealing(scale, found.bar.start, found.bar.end));
    document.getElementById(barId(found.bar.operation))?.scrollIntoView({ block: 'nearest' });
  });
  const drawn = scale !== null;
  useEffect(() => reveal(selected), [selected, drawn]);
}
