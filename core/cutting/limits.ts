import { err, ok, issue, type Issue, type Result } from '../result.ts';
import { TOO_NARROW_TO_HOLD } from '../part/too-narrow.ts';
import { formatLength } from '../units/length.ts';
import type { Cover } from './cover.ts';
import { NARROWEST_CUT_MM, type BlankSize, type RunInput, type Stock } from './run.ts';
import type { SheetLayout } from './layout.ts';

const usableWidth = (stock: Stock): number => stock.widthMm - stock.sideTrimMm;
const usableLength = (stock: Stock): number =>
  stock.lengthMm === null ? Infinity : stock.lengthMm - stock.endTrimMm;

const canTrim = (mm: number): boolean => mm === 0 || mm >= NARROWEST_CUT_MM;

/**
 * Why a run cannot be cut, as far as its figures show: numbers out of range, no stock, a blank beyond the sheets or the shear.
 * @returns the run itself, or one problem per blank size and limit
 */
export function checkRun(run: RunInput, sizes: readonly BlankSize[]): Result<RunInput> {
  const found = [...outOfRange(run), ...sizes.flatMap((size) => sizeProblems(run, size))];
  if (run.stock.length === 0) found.push(noStock(run, sizes));
  return found.length > 0 ? err(...found) : ok(run);
}

/** Blanks named in a sentence; the rest are counted. */
const NAMED = 3;

/** As a sentence gives a blank. */
const sizeOf = ({ girthMm, lengthMm }: BlankSize, { units }: RunInput): string =>
  `girth ${formatLength(girthMm, units)} and length ${formatLength(lengthMm, units)}`;

function noStock(run: RunInput, sizes: readonly BlankSize[]): Issue {
  const named = sizes.slice(0, NAMED).map((size) => {
    const of = size.lines.map((line) => line.id).join(', ');
    return `${of} (${sizeOf(size, run)})`;
  });
  const rest = sizes.length > NAMED ? ` and ${sizes.length - NAMED} more sizes` : '';
  const message = `There is no stock of this material, gauge and colour for the blanks of line ${named.join('; ')}${rest}.`;
  return issue(
    'run',
    'stock',
    message,
    'Enter a sheet size of this metal in Shop, Sheet sizes, then plan again.',
  );
}

function outOfRange(run: RunInput): Issue[] {
  const found: Issue[] = [];
  const need = (fine: boolean, subject: string, field: string, message: string): void => {
    if (!fine) found.push(issue(subject, field, `${message}.`, 'Correct it and plan again.'));
  };
  const count = (value: number): boolean => Number.isInteger(value) && value >= 0 && value <= 1_000_000;
  const length = (value: number): boolean => Number.isFinite(value) && value > 0;
  const ids = run.lines.map((line) => line.id);
  need(new Set(ids).size === ids.length, 'run', 'lines', 'A line is in the run twice');
  for (const line of run.lines) {
    need(
      count(line.quantity) && count(line.overrun),
      `line ${line.id}`,
      'quantity',
      `Line ${line.id} asks for ${line.quantity} and allows ${line.overrun} more; both must be whole numbers from 0 to 1,000,000`,
    );
    need(
      length(line.girthMm) && length(line.lengthMm),
      `line ${line.id}`,
      'girth',
      `The blank of line ${line.id} has no girth or no length; both must be above 0`,
    );
  }
  for (const stock of run.stock) {
    const fine = length(stock.widthMm) && (stock.lengthMm === null || length(stock.lengthMm));
    need(
      fine && usableWidth(stock) > 0 && usableLength(stock) > 0,
      `stock ${stock.id}`,
      'width',
      `Stock ${stock.id} must be wider and longer than its trim cuts`,
    );
    need(
      canTrim(stock.endTrimMm) && canTrim(stock.sideTrimMm),
      `stock ${stock.id}`,
      'trim',
      `Stock ${stock.id} has a trim too thin to shear off: it must be 0, or at least ${formatLength(NARROWEST_CUT_MM, run.units)}`,
    );
    const cost = stock.kind === 'sheet' ? stock.costCents : stock.centsPerMetre;
    need(
      Number.isFinite(cost) && cost >= 0,
      `stock ${stock.id}`,
      'cost',
      `The cost of stock ${stock.id} must be 0 or more`,
    );
    need(
      stock.kind === 'coil' || stock.available === null || count(stock.available),
      `stock ${stock.id}`,
      'count',
      `The count of stock ${stock.id} must be a whole number from 0`,
    );
  }
  const { backGaugeMm, lengthMm, minStripMm } = run.shear;
  need(
    length(lengthMm) && backGaugeMm.min >= 0 && backGaugeMm.max > backGaugeMm.min && minStripMm >= 0,
    'shear',
    'limits',
    'The shear needs a length above 0, a back gauge that travels and a narrowest strip of 0 or more',
  );
  return found;
}

function sizeProblems(run: RunInput, size: BlankSize): Issue[] {
  const { shear, stock, units } = run;
  const length = (mm: number): string => formatLength(mm, units);
  const lines = size.lines.map((line) => line.id).join(', ');
  const subject = `line ${lines}`;
  const blank = `The blank of line ${lines}, ${sizeOf(size, run)},`;
  const found: Issue[] = [];
  const refuse = (field: string, limit: string, advice: string): void =>
    void found.push(issue(subject, field, `${blank} ${limit}.`, advice));
  const widest = Math.max(0, ...stock.map(usableWidth));
  const longest = Math.max(0, ...stock.map(usableLength));
  if (stock.length > 0 && size.girthMm > widest)
    refuse(
      'girth',
      `is wider than the widest stock, ${length(widest)} after trim`,
      'Use wider stock, or make the part in two pieces.',
    );
  if (stock.length > 0 && size.lengthMm > longest)
    refuse(
      'length',
      `is longer than the longest stock, ${length(longest)} after trim`,
      'Use longer stock, or make the part in shorter pieces with a lap.',
    );
  if (size.lengthMm > shear.lengthMm)
    refuse(
      'length',
      `is longer than the shear, ${length(shear.lengthMm)}`,
      'Cut it on a longer shear, or make the part in shorter pieces with a lap.',
    );
  const least = Math.max(shear.backGaugeMm.min, NARROWEST_CUT_MM);
  if (size.girthMm < least)
    refuse(
      'girth',
      `is narrower than the back gauge can be set, ${length(least)}`,
      `${TOO_NARROW_TO_HOLD} Remove it from this run.`,
    );
  if (size.lengthMm < least)
    refuse(
      'length',
      `is shorter than the back gauge can be set, ${length(least)}`,
      `${TOO_NARROW_TO_HOLD} Remove it from this run.`,
    );
  return found;
}

/** Sizes that no stock yields although each limit alone allows it: it is the limits together that refuse them. */
export function uncuttable(run: RunInput, cover: Cover<SheetLayout>, sizes: readonly BlankSize[]): Issue[] {
  return sizes.flatMap((size, item) => {
    const only = sizes.map((_, at) => (at === item ? 1 : 0));
    if (cover.price(only, only, null, 'quick').columns.length > 0) return [];
    const lines = size.lines.map((line) => line.id).join(', ');
    const message = `No stock yields the blank of line ${lines}, ${sizeOf(size, run)}: the sheets that are large enough cannot be cut to it within the shear's length, back gauge and narrowest strip.`;
    return [issue(`line ${lines}`, 'girth', message, 'Use a sheet nearer its size, or another shear.')];
  });
}

/** What to say when the stock on hand does not reach. */
export const stockRunsOut = (sizes: readonly BlankSize[]): Issue => {
  const pieces = sizes.reduce((sum, size) => sum + size.quantity, 0);
  const message = `The stock on hand is not enough for the ${pieces} blanks of this run; nothing was planned.`;
  return issue('run', 'stock', message, 'Enter or order more sheets, or move some lines to a later run.');
};
