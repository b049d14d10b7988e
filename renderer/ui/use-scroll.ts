import { useLayoutEffect, useRef, useState } from 'react';

/** How far to scroll so that a stretch is in sight; the same when it is already. Pixels. */
export function scrollToShow(from: number, to: number, top: number, height: number): number {
  if (from < top) return from;
  return to > top + height ? to - height : top;
}

/**
 * Where a long list is scrolled to, how much of it is in sight, and how to bring a stretch of it into sight. Pixels;
 * the width is 0 until it is known.
 * @param headHeight of the headings, which stay in place above the rows
 */
export function useScroll(headHeight: number) {
  const scroller = useRef<HTMLDivElement>(null);
  const [place, setPlace] = useState({ top: 0, height: 600, width: 0 });
  useLayoutEffect(() => {
    const element = scroller.current;
    if (!element) return;
    const read = () =>
      setPlace({
        top: element.scrollTop,
        height: element.clientHeight - headHeight,
        width: element.clientWidth,
      });
    read();
    const sizes = new ResizeObserver(read);
    sizes.observe(element);
    element.addEventListener('scroll', read, { passive: true });
    return () => {
      sizes.disconnect();
      element.removeEventListener('scroll', read);
    };
  }, [headHeight]);
  const show = (from: number, to: number): void => {
    const element = scroller.current;
    if (element) element.scrollTop = scrollToShow(from, to, element.scrollTop, place.height);
  };
  return { scroller, ...place, show };
}
