import { loadavg } from 'node:os';
import { join } from 'node:path';
import type { CDPSession, Page } from '@playwright/test';
import { instant } from '../../core/units/brand.ts';
import { loadDemo } from '../../demo-data/load.ts';
import { launchBrowser, NOW, openBrowser } from '../e2e/open.ts';
import { lane } from '../e2e/steps.ts';
import { findBrowser } from '../e2e/runtimes.ts';
import { framesWhile, manyBars, withShop } from './window.ts';

const BARS = 2000;
/** So many operations are in the hand. */
const HELD = 30;
const DRAGS = 5;
const ZOOMS_OUT = 3;
/** Pointer moves of one drag. */
const MOVES = 60;
/** A window just opened is busy with itself: chances, cut runs. */
const SETTLED_MS = 8_000;

const median = (times: readonly number[]): number =>
  Math.round(10 * (times.toSorted((a, b) => a - b)[Math.floor(times.length / 2)] ?? NaN)) / 10;

interface Drags {
  readonly dropMs: number[];
  readonly ghostMs: number[];
  readonly framesPerSecond: number[];
  readonly longestFrameMs: number[];
}

/**
 * A run of 30 dragged through the queue of a board of 2,000 bars, in a browser; prints one JSON line (medians of five
 * drags). `ghostMs`: what the window's thread works for each move of the pointer, painting included; `dropMs`: from letting
 * go to the painted board without anything in the hand. Needs a build and a browser.
 */
export async function benchBoard(): Promise<void> {
  if (!findBrowser()) throw new Error('There is no browser to drive: name one by FOLDWEEK_TEST_BROWSER.');
  const now = instant(Date.parse(NOW) / 1000);
  const shop = manyBars(loadDemo(join(import.meta.dirname, '../../demo-data/shop'), now), BARS);
  await withShop(shop, async (dataDir) => {
    const browser = await launchBrowser();
    const { page, close } = await openBrowser(dataDir, browser);
    await page.setViewportSize({ width: 1440, height: 900 });
    await lane(page, 'Shear').getByRole('option').first().waitFor({ timeout: 60_000 });
    await page.waitForTimeout(SETTLED_MS);
    const { dropMs, ghostMs, framesPerSecond, longestFrameMs } = await dragged(page);
    await close();
    const figures = {
      ...{ lines: shop.line.length, bars: shop.line.length * 2, held: HELD },
      ...{ dropMs: median(dropMs), ghostMs: median(ghostMs), fps: median(framesPerSecond) },
      ...{ longestFrameMs: median(longestFrameMs), load: Math.round(10 * (loadavg()[0] ?? NaN)) / 10 },
    };
    process.stdout.write(`${JSON.stringify(figures)}\n`);
  });
}

async function dragged(page: Page): Promise<Drags> {
  await page.keyboard.press('ArrowRight');
  // Far enough to see what the thirty go past.
  for (let i = 0; i < ZOOMS_OUT; i++) await page.keyboard.press('-');
  for (let i = 1; i < HELD; i++) await page.keyboard.press('Shift+ArrowRight');
  const cdp = await page.context().newCDPSession(page);
  await cdp.send('Performance.enable');
  const drags: Drags = { dropMs: [], ghostMs: [], framesPerSecond: [], longestFrameMs: [] };
  // Let go at another place each time.
  for (let i = 0; i < DRAGS; i++) await dragOnce(page, cdp, drags, 0.9 - 0.1 * i);
  return drags;
}

/** From the selected bar through its lane to the right and back to a share of the lane's sight. */
async function dragOnce(page: Page, cdp: CDPSession, drags: Drags, to: number): Promise<void> {
  const bar = await page.getByRole('option', { selected: true }).last().boundingBox();
  const board = await page.getByRole('application', { name: /Queues of the machines/ }).boundingBox();
  if (!bar || !board) throw new Error('the board is not on screen');
  const y = bar.y + bar.height / 2;
  const left = Math.max(board.x, bar.x) + 2;
  await page.mouse.move(left, y);
  await page.mouse.down();
  await page.mouse.move(left + 8, y);
  const before = await taskSeconds(cdp);
  const frames = await framesWhile(page, async () => {
    for (let i = 1; i <= MOVES; i++) {
      const out = (2 * i) / MOVES;
      const share = out <= 1 ? out : 1 - (out - 1) * (1 - to);
      await page.mouse.move(board.x + 40 + share * (board.width - 80), y);
    }
  });
  drags.ghostMs.push((1000 * ((await taskSeconds(cdp)) - before)) / MOVES);
  drags.framesPerSecond.push(frames.perSecond);
  drags.longestFrameMs.push(frames.longestMs);
  drags.dropMs.push(await dropped(page));
  // The plan is stored, and the board at rest, before the next.
  await page.getByRole('button', { name: /^Undo: Move 30 operations/ }).waitFor();
  await page.waitForTimeout(1000);
}

async function taskSeconds(cdp: CDPSession): Promise<number> {
  const { metrics } = await cdp.send('Performance.getMetrics');
  return metrics.find(({ name }) => name === 'TaskDuration')?.value ?? NaN;
}

/** Lets go, and tells how long it took until a frame without a hand was painted. */
async function dropped(page: Page): Promise<number> {
  const painted = page.evaluate(
    () =>
      new Promise<number>((resolve) => {
        window.addEventListener(
          'pointerup',
          ({ timeStamp }) => {
            const look = () => {
              if (document.querySelector('[class*=inHand]')) return void requestAnimationFrame(look);
              const { port1, port2 } = new MessageChannel();
              // A message is heard after the frame that is being made.
              port1.onmessage = () => resolve(performance.now() - timeStamp);
              port2.postMessage(null);
            };
            requestAnimationFrame(look);
          },
          { capture: true, once: true },
        );
      }),
  );
  await page.mouse.up();
  return painted;
}
