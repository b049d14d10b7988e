import { useLayoutEffect, useRef, useState } from 'react';

/** The headings' height, as in import.module.css. */
const HEADS = 42;

/** Where a list is scrolled to, how much of it is in sight, and how to bring a stretch of it into sight. Pixels. */
export function useScroll() {
  const scroller = useRef<HTMLDivElement>(null);
  const [place, setPlace] = useState({ top: 0, height: 600, width: 900 });
  useLayoutEffect(() => {
    const element = scroller.current;
    if (!element) return;
    const read = () =>
      setPlace({
        top: element.scrollTop,
        height: element.clientHeight - HEADS,
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
  }, []);
  const show = (from: number, to: number): void => {
    const element = scroller.current;
    if (!element) return;
    if (from < element.scrollTop) element.scrollTop = from;
    else if (to > element.scrollTop + place.height) element.scrollTop = to - place.height;
  };
  return { scroller, ...place, show };
}
