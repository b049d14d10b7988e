import { BrowserWindow, dialog } from 'electron';
import type { Printable } from '../core/contract/print.ts';
import { writeWhole } from './atomic-file.ts';
import type { Store } from './db/open.ts';
import { Refused } from './refused.ts';
import { PAGE_ADDRESS } from './security.ts';
import { webPreferences } from './window.ts';

/** How long the print page may take to say that it is drawn: a run's steps wait for every run before it to be planned. */
const READY_MS = 60_000;
const POLL_MS = 50;

/** Inches: room for the page number below. */
const MARGINS = { top: 0.4, bottom: 0.6, left: 0.4, right: 0.4 };
const PAGE_NUMBER =
  '<div style="width: 100%; margin: 0 10mm; text-align: right; font: 8px sans-serif">' +
  'page <span class="pageNumber"></span> of <span class="totalPages"></span></div>';

/** Makes PDFs from the print route in a window nobody sees, and asks where they go. @returns the path, or null when the user changed their mind */
export const pdfPrinter =
  (store: Store, preload: string, owner: () => BrowserWindow | null) =>
  async (what: Printable): Promise<string | null> => {
    const units = store.run('read the settings', ({ rows }) => rows.read('settings')[0]?.units);
    const pdf = await drawPdf(addressOf(what), preload, units === 'in' ? 'Letter' : 'A4');
    const parent = owner();
    const ask = { defaultPath: `${fileNameOf(what)}.pdf`, filters: [{ name: 'PDF', extensions: ['pdf'] }] };
    const { canceled, filePath } = await (parent
      ? dialog.showSaveDialog(parent, ask)
      : dialog.showSaveDialog(ask));
    if (canceled || !filePath) return null;
    writeWhole(filePath, pdf);
    return filePath;
  };

/** The print route of what is printed, and what its choice is called there. */
function addressOf(print: Printable): string {
  const query = new URLSearchParams(choiceOf(print));
  return `${PAGE_ADDRESS}#/print/${print.what}?${query.toString()}`;
}

function choiceOf(print: Printable): Record<string, string> {
  switch (print.what) {
    case 'dispatch':
      return {
        days: String(print.days),
        ...(print.machineId ? { machine: print.machineId } : {}),
        ...(print.drawings ? { drawings: 'yes' } : {}),
      };
    case 'part':
      return {
        part: print.partId,
        ...(print.metal ? { material: print.metal.materialId, gauge: print.metal.gauge } : {}),
      };
    case 'traveller':
      return { line: print.lineId };
    case 'cutting':
      return { run: print.runId, drawings: print.drawings ? 'yes' : 'no' };
    case 'purchases':
      return {};
  }
}

function fileNameOf(print: Printable): string {
  switch (print.what) {
    case 'dispatch':
      return `dispatch ${print.machineId ?? 'all machines'}`;
    case 'part':
      return `drawing ${print.partId}`;
    case 'traveller':
      return `traveller ${print.lineId.replace('/', '-')}`;
    case 'cutting':
      return `cutting ${print.runId.replace('/', '-')}`;
    case 'purchases':
      return 'purchase list';
  }
}

async function drawPdf(address: string, preload: string, pageSize: 'Letter' | 'A4'): Promise<Uint8Array> {
  const page = new BrowserWindow({ show: false, webPreferences: webPreferences(preload) });
  try {
    await page.loadURL(address);
    await untilReady(page);
    return await page.webContents.printToPDF({
      pageSize,
      printBackground: true,
      preferCSSPageSize: false,
      margins: MARGINS,
      displayHeaderFooter: true,
      headerTemplate: '<span></span>',
      footerTemplate: PAGE_NUMBER,
    });
  } finally {
    page.destroy();
  }
}

/** The print route sets data-print-ready once everything is drawn. */
async function untilReady(page: BrowserWindow): Promise<void> {
  const givenUpAt = Date.now() + READY_MS;
  while (Date.now() < givenUpAt) {
    const ready: unknown = await page.webContents.executeJavaScript(
      'document.documentElement.dataset.printReady',
    );
    if (ready === 'true') return;
    await new Promise((resolve) => setTimeout(resolve, POLL_MS));
  }
  throw new Refused('refused', 'The page to print was not drawn in time. Nothing was saved; try again.');
}
