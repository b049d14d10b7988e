import { asStocked, usableSize } from '../material/usable-sheet.ts';
import type { Lot } from '../material/lot.ts';
import type { Sheet } from '../material/material.ts';

/** Sheets of one size that are left whole; of a coil one long sheet. Usable sizes. */
interface Size {
  readonly widthMm: number;
  readonly lengthMm: number;
  readonly coil: boolean;
  left: number;
}

/** A sheet that panels were crosscut from: what of its length is left. */
interface OpenSheet {
  readonly widthMm: number;
  readonly coil: boolean;
  restMm: number;
}

/** A panel that strips were ripped from: what of its width is left. */
interface Panel {
  readonly lengthMm: number;
  restMm: number;
}

/** The sheets of one lot that no line has been given yet. */
export interface LotSheets {
  readonly lot: Lot;
  readonly sizes: readonly Readonly<Size>[];
  readonly sheets: readonly Readonly<OpenSheet>[];
  readonly panels: readonly Readonly<Panel>[];
}

interface Blank {
  readonly girthMm: number;
  readonly lengthMm: number;
}

/** A micron of grace: lengths turned from inches must not lose a piece to rounding. */
const GRACE_MM = 0.001;
const fit = (stretchMm: number, eachMm: number): number => Math.floor((stretchMm + GRACE_MM) / eachMm);

/** A lot as it lies there. @param rows stock of one metal and lot, as counted */
export function lotSheets(lot: Lot, rows: readonly Sheet[]): LotSheets {
  const sizes = rows.flatMap((row): Size[] => {
    if (row.onHand === 0) return [];
    const coil = row.form === 'coil';
    const lengthMm = coil ? row.onHand * row.lengthMm : row.lengthMm;
    return [{ ...usableSize({ ...row, lengthMm }), coil, left: coil ? 1 : row.onHand }];
  });
  sizes.sort((a, b) => a.widthMm * a.lengthMm - b.widthMm * b.lengthMm);
  return { lot, sizes, sheets: [], panels: [] };
}

/** Whole sheets that are left; a coil counts as one. */
export const wholeSheets = ({ sizes }: LotSheets): number => sizes.reduce((sum, { left }) => sum + left, 0);

/** The usable area of the whole sheets that are left, mm². */
export const wholeArea = ({ sizes }: LotSheets): number =>
  sizes.reduce((sum, { widthMm, lengthMm, left }) => sum + widthMm * lengthMm * left, 0);

/** What is left when the next line is of another run: whole sheets only, and of a coil what is still on it. */
export const putAway = (lot: LotSheets): LotSheets => ({
  ...lot,
  sheets: lot.sheets.filter(({ coil }) => coil),
  panels: [],
});

/**
 * So many blanks cut from a lot, first fit: panels as long as the blank, strips across them, what is left of both before
 * the next sheet, small sheets (remnants) first. The cut list of a run does as well or better, so that a lot which
 * suffices here nearly always suffices there; where not, the run says so (core/planning/cut-run.ts).
 * @returns what is left, and how many blanks there was nothing left for
 */
export function cutFrom(lot: LotSheets, { girthMm, lengthMm }: Blank, pieces: number) {
  const sizes = lot.sizes.map((size) => ({ ...size }));
  const sheets = lot.sheets.map((sheet) => ({ ...sheet }));
  const panels = lot.panels.map((panel) => ({ ...panel }));
  let missing = pieces;
  const rip = (panel: Panel): void => {
    const girth = asStocked(girthMm, [panel.restMm]);
    const each = fit(panel.lengthMm, asStocked(lengthMm, [panel.lengthMm]));
    const strips = each === 0 ? 0 : Math.min(fit(panel.restMm, girth), Math.ceil(missing / each));
    panel.restMm -= strips * girth;
    missing = Math.max(0, missing - strips * each);
  };
  const crosscut = (sheet: OpenSheet): void => {
    const length = asStocked(lengthMm, [sheet.restMm]);
    if (fit(sheet.widthMm, asStocked(girthMm, [sheet.widthMm])) === 0) return;
    while (missing > 0 && fit(sheet.restMm, length) > 0) {
      const panel = { lengthMm: length, restMm: sheet.widthMm };
      sheet.restMm -= length;
      rip(panel);
      panels.push(panel);
    }
  };
  panels.forEach(rip);
  sheets.forEach(crosscut);
  for (const size of sizes)
    while (missing > 0 && size.left > 0) {
      const before = missing;
      const sheet = { widthMm: size.widthMm, coil: size.coil, restMm: size.lengthMm };
      crosscut(sheet);
      if (missing === before) break;
      size.left -= 1;
      sheets.push(sheet);
    }
  return { left: { lot: lot.lot, sizes, sheets, panels } satisfies LotSheets, missing };
}
