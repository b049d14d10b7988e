import type { Page } from '@playwright/test';

/** What a window shows, measured: words that are cut off or lie over others, and what a message covers. */

/**
 * Words that cannot be read whole: wider than what shows them, or beyond the edge of their drawing. What scrolls can be
 * read; what is typed scrolls in its field; words for screen readers only are not shown.
 */
export const cutWords = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const hasWords = (element: Element): boolean =>
      [...element.childNodes].some((node) => node.nodeType === Node.TEXT_NODE && node.textContent?.trim());
    const said = (element: Element): string => (element.textContent ?? '').trim().slice(0, 60);
    const seen = (element: Element): boolean => {
      const { width, height } = element.getBoundingClientRect();
      return width > 2 && height > 2 && getComputedStyle(element).visibility === 'visible';
    };
    const tooWide = [...document.querySelectorAll<HTMLElement>('body *')].filter((element) => {
      if (!(element instanceof HTMLElement) || !hasWords(element) || !seen(element)) return false;
      if (['auto', 'scroll'].includes(getComputedStyle(element).overflowX)) return false;
      return getComputedStyle(element).display !== 'inline' && element.scrollWidth > element.clientWidth + 1;
    });
    const cells = [...document.querySelectorAll('[role=gridcell], [role=columnheader]')].filter(
      (cell) =>
        seen(cell) && (cell.scrollWidth > cell.clientWidth + 1 || cell.scrollHeight > cell.clientHeight + 1),
    );
    const drawn = [...document.querySelectorAll('svg text')].filter((text) => {
      const [own, edge] = [text.getBoundingClientRect(), text.closest('svg')!.getBoundingClientRect()];
      return own.width > 0 && (own.left < edge.left - 1 || own.right > edge.right + 1);
    });
    return [...new Set([...tooWide, ...cells, ...drawn].map(said))];
  });

/** What lies beyond the right edge of a sheet of paper, its margin included. */
export const beyondPaper = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll('section')].flatMap((paper) => {
      const right = paper.getBoundingClientRect().right - parseFloat(getComputedStyle(paper).paddingRight);
      return [...paper.querySelectorAll('*')]
        .filter((part) => part.getBoundingClientRect().right > right + 2)
        .map((part) => `${part.tagName} ${(part.textContent ?? '').trim().slice(0, 40)}`);
    }),
  );

/** What can be pressed or typed in and lies under the message that is shown, however little of it. */
export const underMessage = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const message = document.querySelector('[role=alertdialog]');
    if (!message) return ['no message is shown'];
    const over = message.getBoundingClientRect();
    /** As much of an element as the boxes around it that scroll or clip leave in sight. */
    const sight = (element: Element): { left: number; right: number; top: number; bottom: number } => {
      let { left, right, top, bottom } = element.getBoundingClientRect();
      for (let box = element.parentElement; box; box = box.parentElement) {
        if (getComputedStyle(box).overflowY === 'visible') continue;
        const edge = box.getBoundingClientRect();
        left = Math.max(left, edge.left);
        right = Math.min(right, edge.right);
        top = Math.max(top, edge.top);
        bottom = Math.min(bottom, edge.bottom);
      }
      return { left, right, top, bottom };
    };
    const pressed =
      'button, a, input, select, textarea, summary, [role=option], [role=tab], [role=gridcell], [role=radio]';
    return [...document.querySelectorAll(pressed)]
      .filter((element) => !message.contains(element))
      .filter((element) => {
        const { left, right, top, bottom } = sight(element);
        const shown = right - left > 0 && bottom - top > 0;
        return shown && left < over.right && right > over.left && top < over.bottom && bottom > over.top;
      })
      .map(
        (element) => element.getAttribute('aria-label') ?? (element.textContent ?? '').trim().slice(0, 60),
      );
  });
