import { mkdtempSync, rmSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import type { Shop } from '../../core/shop/state.ts';
import { openStore } from '../../electron/db/open.ts';
import { putShop } from '../../electron/service/begin.ts';
import { openBrowser, openDesktop, type Opened } from '../e2e/open.ts';
import { findBrowser, findElectron } from '../e2e/runtimes.ts';

const root = join(import.meta.dirname, '../..');
const print = (what: string, figure: string): void => console.log(`${what.padEnd(58)} ${figure}`);

/** The demo shop with its orders repeated until the board has at least `bars` bars. */
export function manyBars(shop: Shop, bars: number): Shop {
  const copies = Math.ceil(bars / (2 * shop.line.length)) - 1;
  const again = Array.from({ length: copies }, (_, k) => k + 1);
  const renamed = (id: string, k: number): string => `${id}-${k}`;
  return {
    ...shop,
    order: [shop.order, ...again.map((k) => shop.order.map((o) => ({ ...o, id: renamed(o.id, k) })))].flat(),
    line: [
      shop.line,
      ...again.map((k) =>
        shop.line.map((l) => ({
          ...l,
          id: `${renamed(l.orderId, k)}/${l.number}`,
          orderId: renamed(l.orderId, k),
        })),
      ),
    ].flat(),
  };
}

export function withShop<T>(shop: Shop, use: (dataDir: string) => Promise<T>): Promise<T> {
  const dataDir = mkdtempSync(join(tmpdir(), 'foldweek-bench-'));
  const log = { info: () => undefined, error: console.error };
  const store = openStore(join(dataDir, 'foldweek.db'), {
    migrations: join(root, 'migrations'),
    stamp: 'bench',
    log,
  });
  store.run('bench', (work) => putShop(work, shop));
  store.close();
  return use(dataDir).finally(() => rmSync(dataDir, { recursive: true, force: true }));
}

const ready = (page: Page): Promise<void> =>
  page.getByRole('listbox', { name: 'Shear queue' }).waitFor({ timeout: 60_000 });

interface Frames {
  readonly perSecond: number;
  readonly longestMs: number;
}

/** Frames a second while something goes on in the window, and the longest frame. */
export async function framesWhile(page: Page, act: () => Promise<void>): Promise<Frames> {
  await page.evaluate(() => {
    const times: number[] = [];
    const tick = (at: number): void => {
      times.push(at);
      requestAnimationFrame(tick);
    };
    requestAnimationFrame(tick);
    Object.assign(window, { frameTimes: times });
  });
  await act();
  const times = await page.evaluate(() => (window as unknown as { frameTimes: number[] }).frameTimes);
  const gaps = times.slice(1).map((t, i) => t - (times[i] ?? t));
  const total = gaps.reduce((sum, gap) => sum + gap, 0);
  return { perSecond: (1000 * gaps.length) / total, longestMs: Math.max(...gaps) };
}

const framesWords = ({ perSecond, longestMs }: Frames): string =>
  `${perSecond.toFixed(0)} frames/s, longest ${longestMs.toFixed(0)} ms`;

/** Zooms and scrolls the board by the wheel. */
async function wheel(page: Page): Promise<void> {
  const board = await page.getByRole('application', { name: /Queues of the machines/ }).boundingBox();
  if (!board) throw new Error('the board is not on screen');
  await page.mouse.move(board.x + board.width / 2, board.y + board.height / 3);
  for (let i = 0; i < 120; i++) {
    const zoom = i % 60 < 30;
    if (zoom) await page.keyboard.down('Control');
    await page.mouse.wheel(0, zoom ? (i % 2 ? 120 : -100) : 200);
    if (zoom) await page.keyboard.up('Control');
  }
}

const SEARCHED_MS = 10_000;
/** A window just opened is busy with itself: chances, cut runs. */
const SETTLED_MS = 5_000;

/** Frames while the week is planned, from half a second after its start: the click itself opens the run's panel. */
async function framesWhileSearching(page: Page): Promise<Frames> {
  await page.waitForTimeout(SETTLED_MS);
  await page.getByRole('button', { name: 'Plan the week', exact: true }).click();
  await page.getByText(/Planning: \d+ of/).waitFor();
  await page.waitForTimeout(500);
  return framesWhile(page, () => page.waitForTimeout(SEARCHED_MS));
}

/** From the press on Cutting until every run has its sheets, in a window that has not planned one yet. */
async function firstSightOfRuns(page: Page): Promise<{ ms: number; frames: Frames }> {
  await page.waitForTimeout(SETTLED_MS);
  let ms = 0;
  const frames = await framesWhile(page, async () => {
    const from = performance.now();
    await page.getByRole('link', { name: 'Cutting' }).click();
    const planning = page.getByText('Working out the sheets of the runs');
    await page.getByRole('grid', { name: 'Runs on the shear' }).waitFor();
    await planning.waitFor({ state: 'hidden', timeout: 60_000 });
    ms = performance.now() - from;
  });
  return { ms, frames };
}

/** So long after the last change the host begins with the runs that nobody opened, and some more. */
const IDLE_MS = 20_000;

/** Frames of a screen while all runs are worked on in a process of their own. */
async function framesWhileIdle(page: Page, screen: string): Promise<Frames> {
  await page.getByRole('link', { name: screen }).click();
  await page.waitForTimeout(SETTLED_MS);
  return framesWhile(page, () => page.waitForTimeout(SEARCHED_MS));
}

/** The Cutting screen's first sight of the demo's runs, and a window while these are worked on unasked. */
async function benchRuns(
  name: string,
  open: (dataDir: string) => Promise<Opened>,
  demo: Shop,
): Promise<void> {
  await withShop(demo, async (dataDir) => {
    const { page, close } = await open(dataDir);
    await ready(page);
    const { ms, frames } = await firstSightOfRuns(page);
    print(`${name}, first sight of all runs`, `${(ms / 1000).toFixed(2)} s, ${framesWords(frames)}`);
    await page.getByText(/^Searching for better sheets for all runs/).waitFor({ timeout: 2 * IDLE_MS });
    for (const screen of ['Cutting', 'Board']) {
      const words = framesWords(await framesWhileIdle(page, screen));
      print(
        `${name}, ${screen}, while idle runs are worked on`,
        `${words} (load ${loadavg()[0]?.toFixed(1)})`,
      );
    }
    await close();
  });
}

/** Start-up to a usable board (second start: warm), and frame rate with 2,000 bars; needs a build (`npm run build`). */
export async function benchWindow(demo: Shop): Promise<void> {
  const display = process.platform !== 'linux' || process.env.DISPLAY || process.env.WAYLAND_DISPLAY;
  const hosts: [string, (dataDir: string) => Promise<Opened>][] = [];
  if (findElectron() && display) hosts.push(['desktop window', openDesktop]);
  if (findBrowser()) hosts.push(['browser host', openBrowser]);
  if (hosts.length === 0) print('window', 'no Electron with a display and no browser found: not measured');
  for (const [name, open] of hosts) {
    await withShop(demo, async (dataDir) => {
      for (const start of ['first start', 'warm start']) {
        const from = performance.now();
        const { page, close } = await open(dataDir);
        await ready(page);
        print(`${name}, ${start} to the board`, `${((performance.now() - from) / 1000).toFixed(2)} s`);
        await close();
      }
    });
    await withShop(manyBars(demo, 2000), async (dataDir) => {
      const { page, close } = await open(dataDir);
      await page.setViewportSize({ width: 1440, height: 900 });
      await ready(page);
      await page.keyboard.press('0');
      print(
        `${name}, 2,000 bars, scrolling and zooming`,
        framesWords(await framesWhile(page, () => wheel(page))),
      );
      await close();
    });
    await benchRuns(name, open, demo);
    for (const bars of [2 * demo.line.length, 1200])
      await withShop(manyBars(demo, bars), async (dataDir) => {
        const { page, close } = await open(dataDir);
        await ready(page);
        print(
          `${name}, ${bars / 2} lines, while the week is planned`,
          framesWords(await framesWhileSearching(page)),
        );
        await close();
      });
  }
}
