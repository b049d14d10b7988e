import { problem, type Problem } from '../result.ts';
import { formatBoth } from '../units/length.ts';
import { replaySteps, type MadePiece, type SheetStack } from './replay.ts';
import { blankSizes, type BlankSize, type RunInput } from './run.ts';
import type { CutStep } from './step.ts';

/**
 * Checks a step list, perhaps edited by hand, by cutting it: every blank of the run as often as asked and no oftener than
 * the overrun allows, no step beyond the shear, nothing left on a stack half cut, no blank of a size nobody asked for.
 * @returns one problem for each thing wrong, none when the list is good
 */
export function checkSteps(
  run: RunInput,
  sheets: readonly SheetStack[],
  steps: readonly CutStep[],
): Problem[] {
  const { pieces, refusals } = replaySteps(steps, sheets, run.shear);
  const sizes = blankSizes(run);
  const blanks = pieces.filter((piece) => piece.place === 'blank');
  const ends = ['blank', 'remnant', 'scrap'];
  return [
    ...refusals.map(({ step, message }) =>
      problem(`step ${step}`, 'size', message, 'Change the step or take it out.'),
    ),
    ...sizes.flatMap((size) => miscounted(size, blanks)),
    ...blanks.filter((piece) => !sizes.some((size) => isOf(size, piece))).map(unasked),
    ...pieces.filter((piece) => !ends.includes(piece.place)).map(leftOver),
  ];
}

const near = (a: number, b: number): boolean => Math.abs(a - b) < 0.005;
const isOf = (size: BlankSize, piece: MadePiece): boolean =>
  near(piece.widthMm, size.girthMm) && near(piece.lengthMm, size.lengthMm);

function miscounted(size: BlankSize, blanks: readonly MadePiece[]): Problem[] {
  const made = blanks.filter((piece) => isOf(size, piece)).reduce((sum, piece) => sum + piece.count, 0);
  const lines = size.lines.map((line) => line.id).join(', ');
  const say = (pieces: number, what: string, allowed: string, advice: string): Problem => {
    const count = `${pieces} ${pieces === 1 ? 'blank is' : 'blanks are'} ${what} for line ${lines}`;
    const message = `${count}: ${size.quantity} asked${allowed}, ${made} cut.`;
    return problem(`line ${lines}`, 'quantity', message, advice);
  };
  const most = size.quantity + size.overrun;
  if (made < size.quantity) return [say(size.quantity - made, 'missing', '', 'Add cuts for them.')];
  if (made > most)
    return [say(made - most, 'too many', `, ${size.overrun} over allowed`, 'Take out those cuts.')];
  return [];
}

function unasked(piece: MadePiece): Problem {
  const size = `girth ${formatBoth(piece.widthMm)}, length ${formatBoth(piece.lengthMm)}`;
  const message = `${piece.count} cut as blanks are of a size nobody asked for: ${size}.`;
  return problem('list', 'size', message, 'Correct the setting.');
}

const leftOver = (piece: MadePiece): Problem =>
  problem(
    `stack ${piece.place}`,
    'steps',
    `${piece.count} pieces are left on stack ${piece.place}.`,
    'Say what becomes of them in its last step.',
  );
