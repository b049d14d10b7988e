import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { BrowserWindow, nativeTheme, screen, type Rectangle } from 'electron';
import { z } from 'zod';
import { writeWhole } from './atomic-file.ts';
import { PAGE_ADDRESS } from './security.ts';

const USUAL = { width: 1440, height: 900 };
const LEAST = { minWidth: 900, minHeight: 600 };
/** The page's --ground (renderer/styles/tokens.css), so that nothing flashes before it draws. */
const BACKGROUND = { light: '#f1eee6', dark: '#191b1e' };

const bounds = z.object({ x: z.int(), y: z.int(), width: z.int().min(400), height: z.int().min(300) });

/** What every page of ours runs with: no Node, its own context, sandboxed. */
export const webPreferences = (preload: string): Electron.WebPreferences => ({
  preload,
  contextIsolation: true,
  sandbox: true,
  nodeIntegration: false,
  webSecurity: true,
  spellcheck: false,
});

/**
 * The app's window, where it was last time.
 * @param folder keeps window.json @param preload the built preload script
 */
export function openWindow(folder: string, preload: string): BrowserWindow {
  const file = join(folder, 'window.json');
  const window = new BrowserWindow({
    ...USUAL,
    ...LEAST,
    ...lastBounds(file),
    show: false,
    title: 'Foldweek',
    backgroundColor: nativeTheme.shouldUseDarkColors ? BACKGROUND.dark : BACKGROUND.light,
    webPreferences: webPreferences(preload),
  });
  window.once('ready-to-show', () => window.show());
  window.on('close', () => writeWhole(file, JSON.stringify(window.getNormalBounds())));
  void window.loadURL(PAGE_ADDRESS);
  return window;
}

/** Null when nothing was remembered, or when that screen is gone. */
function lastBounds(file: string): Rectangle | null {
  const last = bounds.safeParse(readJson(file));
  if (!last.success) return null;
  const { workArea } = screen.getDisplayMatching(last.data);
  const { x, y, width, height } = last.data;
  const visible =
    x < workArea.x + workArea.width &&
    x + width > workArea.x &&
    y < workArea.y + workArea.height &&
    y + height > workArea.y;
  return visible ? last.data : null;
}

function readJson(file: string): unknown {
  try {
    return JSON.parse(readFileSync(file, 'utf8')) as unknown;
  } catch {
    return null;
  }
}
