import { issue, type Issue } from '../result.ts';
import { formatLength, type Units } from '../units/length.ts';
import { replaySteps, type MadePiece, type SheetStack } from './replay.ts';
import { blankSizes, type BlankSize, type RunInput } from './run.ts';
import type { CutStep } from './step.ts';
import { counted } from '../units/count.ts';

/**
 * Checks a step list, perhaps edited by hand, by cutting it: every blank of the run as often as asked and no oftener than
 * the overrun allows, no step beyond the shear, nothing left on a stack half cut, no blank of a size nobody asked for.
 * @returns one problem for each thing wrong, none when the list is good
 */
export function checkSteps(run: RunInput, sheets: readonly SheetStack[], steps: readonly CutStep[]): Issue[] {
  const { pieces, refusals } = replaySteps(steps, sheets, run);
  const sizes = blankSizes(run);
  const blanks = pieces.filter((piece) => piece.place === 'blank');
  const ends = ['blank', 'remnant', 'scrap'];
  return [
    ...refusals.map(({ step, message }) =>
      issue(`step ${step}`, 'size', message, 'Change the step or remove it.'),
    ),
    ...sizes.flatMap((size) => miscounted(size, blanks)),
    ...blanks
      .filter((piece) => !sizes.some((size) => isOf(size, piece)))
      .map((piece) => unasked(piece, run.units)),
    ...pieces.filter((piece) => !ends.includes(piece.place)).map(leftOver),
  ];
}

const near = (a: number, b: number): boolean => Math.abs(a - b) < 0.005;
const isOf = (size: BlankSize, piece: MadePiece): boolean =>
  near(piece.widthMm, size.girthMm) && near(piece.lengthMm, size.lengthMm);

function miscounted(size: BlankSize, blanks: readonly MadePiece[]): Issue[] {
  const made = blanks.filter((piece) => isOf(size, piece)).reduce((sum, piece) => sum + piece.count, 0);
  const lines = size.lines.map((line) => line.id).join(', ');
  const say = (pieces: number, what: string, allowed: string, advice: string): Issue => {
    const count = `${counted(pieces, 'blank is', 'blanks are')} ${what} for line ${lines}`;
    const message = `${count}: ${size.quantity} asked${allowed}, ${made} cut.`;
    return issue(`line ${lines}`, 'quantity', message, advice);
  };
  const most = size.quantity + size.overrun;
  if (made < size.quantity) return [say(size.quantity - made, 'missing', '', 'Add cuts for them.')];
  if (made > most)
    return [say(made - most, 'too many', `, ${size.overrun} extra accepted`, 'Remove those cuts.')];
  return [];
}

function unasked(piece: MadePiece, units: Units): Issue {
  const size = `girth ${formatLength(piece.widthMm, units)}, length ${formatLength(piece.lengthMm, units)}`;
  const message = `${piece.count} cut as blanks are of a size nobody asked for: ${size}.`;
  return issue('list', 'size', message, 'Correct the setting.');
}

const leftOver = (piece: MadePiece): Issue =>
  issue(
    `stack ${piece.place}`,
    'steps',
    `${piece.count} pieces are left on stack ${piece.place}.`,
    'Say what becomes of them in its last step.',
  );
