import { bad, good, problem, type Problem, type Result } from '../shop/result.ts';
import { parseLength, type LengthUnits } from '../units/length.ts';

/** One flat cut asked for across the counter. */
export interface WalkInCut {
  readonly quantity: number;
  readonly girthMm: number;
  readonly lengthMm: number;
  /** A gauge label of the shop; null when the text names none. */
  readonly gauge: string | null;
  /** A colour's id; null when the text names none. */
  readonly colourId: string | null;
}

/** What the shop's words are, to read the text by. */
export interface WalkInWords {
  readonly units: LengthUnits;
  readonly gauges: readonly string[];
  readonly colours: readonly { readonly id: string; readonly name: string }[];
}

const example = 'Write it like: 5 @ 9 1/2 in x 10 ft, 26 ga, moss.';
const sizes = /^(\d+)\s*(?:@|pcs?\b\.?|pieces\b|of\b)\s*(.+?)\s*(?:[x×*]|\bby\b)\s*(.+)$/i;
/** "26 ga", "26ga.", "26 gauge", "gauge 26" */
const gaugeWords = /^(?:(\S+?)\s*(?:ga|gauge)\.?|(?:ga|gauge)\.?\s*(\S+))$/i;
/** A comma that parts words; one between digits groups thousands. */
const comma = /,(?!\d{3}(?!\d))/;

/**
 * Reads cuts as people jot them down, one a line: quantity @ girth x length, then gauge and colour in any order.
 * Empty lines are skipped; a length without a unit is in the shop's.
 * @returns the cuts in order, or a problem for each line that cannot be read
 */
export function parseWalkIn(text: string, words: WalkInWords): Result<WalkInCut[]> {
  const cuts: WalkInCut[] = [];
  const problems: Problem[] = [];
  text.split('\n').forEach((line, at) => {
    if (line.trim() === '') return;
    const read = parseCut(line.trim(), `row ${at + 1}`, words);
    if (read.ok) cuts.push(read.value);
    else problems.push(...read.problems);
  });
  return problems.length > 0 ? bad(...problems) : good(cuts);
}

function parseCut(line: string, subject: string, words: WalkInWords): Result<WalkInCut> {
  const [first = '', ...rest] = line.split(comma).map((part) => part.trim());
  const [, pieces = '', across = '', along = ''] = sizes.exec(first) ?? [];
  const quantity = Number(pieces);
  if (!(quantity >= 1 && quantity <= 100_000)) {
    const message = `"${first}" does not say how many of which girth and length, from 1 to 100,000 pieces.`;
    return bad(problem(subject, 'quantity', message, example));
  }
  const girth = parseLength(across, words.units);
  const length = parseLength(along, words.units);
  if (!girth.ok) return bad(...girth.problems.map((p) => ({ ...p, subject, field: 'girth' })));
  if (!length.ok) return bad(...length.problems.map((p) => ({ ...p, subject, field: 'length' })));
  if (girth.value <= 0 || length.value <= 0) {
    return bad(problem(subject, 'girth', `"${first}" has a girth or length of nought.`, example));
  }
  const named = parseWords(rest, subject, words);
  if (!named.ok) return named;
  return good({ quantity, girthMm: girth.value, lengthMm: length.value, ...named.value });
}

function parseWords(
  parts: readonly string[],
  subject: string,
  { gauges, colours }: WalkInWords,
): Result<Pick<WalkInCut, 'gauge' | 'colourId'>> {
  let gauge: string | null = null;
  let colourId: string | null = null;
  for (const part of parts.filter((one) => one !== '')) {
    const [, before, after] = gaugeWords.exec(part) ?? [];
    const label = before ?? after;
    const colour = colours.find(({ id, name }) =>
      [id, name].some((word) => word.toLowerCase() === part.toLowerCase()),
    );
    if (label !== undefined && gauges.includes(label)) gauge = label;
    else if (label !== undefined) {
      const message = `The gauge "${label}" is not one of the shop's: ${gauges.join(', ')}.`;
      return bad(problem(subject, 'gauge', message, 'Choose one of these or enter the gauge first.'));
    } else if (colour) colourId = colour.id;
    else {
      const message = `"${part}" is neither a gauge nor a colour of the shop.`;
      return bad(
        problem(
          subject,
          'colour',
          message,
          `${example} Colours: ${colours.map(({ name }) => name).join(', ')}.`,
        ),
      );
    }
  }
  return good({ gauge, colourId });
}
