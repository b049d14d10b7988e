import { readFileSync } from 'node:fs';
import { expect } from '@playwright/test';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import type { App } from './app.ts';

/** The text of a PDF, one string a page. */
export async function pdfPages(path: string): Promise<string[]> {
  const document = await getDocument({ data: new Uint8Array(readFileSync(path)), verbosity: 0 }).promise;
  const pages: string[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const { items } = await (await document.getPage(number)).getTextContent();
    pages.push(items.map((item) => ('str' in item ? item.str : '')).join(' '));
  }
  return pages;
}

/** The desktop saves a PDF where its dialog says; a browser prints the same route, here into a file too. */
export async function printTo(path: string, { page, electron }: App): Promise<void> {
  if (!electron) {
    await expect(page.locator('html')).toHaveAttribute('data-print-ready', 'true');
    await page.pdf({ path });
    return;
  }
  await electron.evaluate(({ dialog }, filePath) => {
    dialog.showSaveDialog = () => Promise.resolve({ canceled: false, filePath });
  }, path);
  await page.getByRole('button', { name: 'Save PDF' }).click();
}
