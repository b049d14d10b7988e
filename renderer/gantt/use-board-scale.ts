import { useEffect, useEffectEvent, useMemo, type RefObject } from 'react';
import type { Interval } from '../../core/time/interval.ts';
import { findBar } from './drop.ts';
import type { Fold } from './fold.ts';
import { rememberSpan, usualSpan } from './kept-span.ts';
import type { Lane } from './lanes.ts';
import { barId } from './options-layer.tsx';
import { fitted, kept, panned, revealing, spanOf, zoomed, type Scale } from './scale.ts';
import { useBoardView } from './view.ts';
import { HOUR } from '../../core/units/duration.ts';

/** What the board shows of the time before it begins. */
const BEFORE_S = HOUR;
const WHEEL_ZOOM = 0.0018;

interface Window {
  /** Pixels; 0 until it has been measured. */
  width: number;
  /** In board seconds, as the scale that comes of it is. */
  horizon: Interval;
  now: number;
  opens: number;
  fold: Fold;
}

/** The board's window on time: kept while other screens are open, always inside the horizon and as wide as the board is. */
export function useBoardScale({ width, horizon, now, opens, fold }: Window) {
  const { scale: stored, look: store } = useBoardView();
  const scale = useMemo((): Scale | null => {
    if (width === 0) return null;
    const first = opens - BEFORE_S;
    const wanted = stored
      ? { ...stored, from: fold.at(stored.from), width }
      : fitted(first, first + usualSpan(), width);
    return kept(wanted, horizon.start, horizon.end);
  }, [stored, width, horizon, opens, fold]);
  useEffect(() => {
    if (scale && !stored) store({ ...scale, from: fold.back(scale.from) });
  }, [scale, stored, store, fold]);

  const look = (next: Scale) => {
    const { from, ...rest } = kept(next, horizon.start, horizon.end);
    rememberSpan(spanOf(next));
    store({ ...rest, from: fold.back(from) });
  };
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
