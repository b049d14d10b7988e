import type { Interval } from '../../core/time/interval.ts';
import { shortDuration } from '../../core/units/duration.ts';
import { barsIn, near, type Bar, type Lane, type Run } from './lanes.ts';
import { endOf, xOf, type Scale } from './scale.ts';

/** Words on a bar: where they may stand and as many lines as fit. */
export interface Label {
  readonly bar: Bar;
  readonly x: number;
  readonly width: number;
  readonly lines: readonly string[];
  /** The one line stands upright, from the bar's foot, in its middle. */
  readonly upright: boolean;
}

const LEAST_PX = 30;
/** A bar as wide as a line of words is high carries its number upright. */
const UPRIGHT_PX = 13;
const WORDS_PX = 74;
const PAD_PX = 5;
export const LINE_PX = 15;
/** What a letter takes in the widest of the system's fonts that tokens.css names. */
export const CHARACTER_PX = 7;
export const BOLD_CHARACTER_PX = 7.8;
/** Line numbers are figures, which are narrower than letters. */
const FIGURE_PX = 6.6;

const shortened = (text: string, width: number): string => {
  const fits = Math.floor(width / CHARACTER_PX);
  return text.length <= fits ? text : `${text.slice(0, Math.max(1, fits - 1)).trimEnd()}…`;
};

/** The widest of some stretches, cut to the window, in pixels. */
function widest(pieces: readonly Interval[], scale: Scale): { x: number; width: number } {
  let best = { x: 0, width: 0 };
  for (const piece of pieces) {
    const left = Math.max(0, xOf(scale, piece.start));
    const width = Math.min(scale.width, xOf(scale, piece.end)) - left;
    if (width > best.width) best = { x: left, width };
  }
  return best;
}

const linesIn = (heightPx: number): number => Math.max(1, Math.floor((heightPx - 6) / LINE_PX));
const standsUpright = (words: string, eachPx: number, widthPx: number, heightPx: number): boolean =>
  widthPx >= UPRIGHT_PX && words.length * eachPx <= heightPx - PAD_PX;

/** Labels for the bars in sight that are wide enough: as many lines as the bar is high, or its number upright. */
export function labelsOf(lane: Lane, scale: Scale, barHeight: number): Label[] {
  return barsIn(lane, scale.from, endOf(scale)).flatMap((bar): Label[] => {
    if ((bar.end - bar.start) / scale.perPixel < UPRIGHT_PX) return [];
    const { x, width } = widest(bar.pieces, scale);
    const room = width - 2 * PAD_PX;
    const height = barHeight / bar.levels;
    if (width < LEAST_PX || bar.lineId.length * BOLD_CHARACTER_PX > room)
      return standsUpright(bar.lineId, FIGURE_PX, width, height)
        ? [{ bar, x: x + width / 2, width, lines: [bar.lineId], upright: true }]
        : [];
    if (height < LINE_PX) return [];
    const more = [bar.partName, `${bar.quantity} pieces`, bar.customer].map((text) => shortened(text, room));
    const lines = [bar.lineId, ...(width >= WORDS_PX ? more : [])].slice(0, linesIn(height));
    return [{ bar, x: x + PAD_PX, width: room, lines, upright: false }];
  });
}

/** A run whose bars are too narrow to be named one by one, as one block with what they share and how many they are. */
export interface Block {
  readonly run: Run;
  readonly x: number;
  readonly width: number;
  readonly lines: readonly string[];
  readonly upright: boolean;
  /** The one sheet colour of its bars, "#2f5d3a"; null: several. */
  readonly hex: string | null;
}

/** Open stretches that follow one another with less than two pixels between. */
function joinedPieces(bars: readonly Bar[], perPixel: number): Interval[] {
  const joined: { start: number; end: number }[] = [];
  for (const { start, end } of bars.flatMap((bar) => bar.pieces)) {
    const last = joined.at(-1);
    if (last && start - last.end < 2 * perPixel) last.end = end;
    else joined.push({ start, end });
  }
  return joined;
}

/** The runs in sight of which fewer than half of the bars have words of their own. */
export function blocksOf(lane: Lane, scale: Scale, barHeight: number, labels: readonly Label[]): Block[] {
  const named = new Set(labels.map(({ bar }) => bar.operation));
  return near(lane.runs, scale.from, endOf(scale)).flatMap((run) => {
    const bars = lane.bars.slice(run.first, run.first + run.count);
    const seen = bars.filter((bar) => bar.end > scale.from && bar.start < endOf(scale));
    const own = seen.filter((bar) => named.has(bar.operation)).length;
    if (run.count < 2 || 2 * own >= seen.length) return [];
    const { x, width } = widest(joinedPieces(bars, scale.perPixel), scale);
    const words = wordsOf(run, width, barHeight);
    const hex = bars.every((bar) => bar.hex === bars[0]?.hex) ? (bars[0]?.hex ?? null) : null;
    return words ? [{ run, x, width, hex, ...words }] : [];
  });
}

/** What a block says in so much room: flat in two lines, upright, or how many alone. */
function wordsOf({ title, count }: Run, width: number, height: number) {
  const room = width - 2 * PAD_PX;
  const flat = [title, `× ${count}`].filter(Boolean);
  if (flat.every((line) => line.length * BOLD_CHARACTER_PX <= room) && height >= 2 * LINE_PX)
    return { lines: flat, upright: false };
  const all = [`${title} × ${count}`.trim(), `× ${count}`];
  const upright = all.find((words) => standsUpright(words, BOLD_CHARACTER_PX, width, height));
  if (upright !== undefined && (upright !== all[1] || width < LEAST_PX))
    return { lines: [upright], upright: true };
  return (all[1] ?? '').length * CHARACTER_PX <= room ? { lines: all.slice(1), upright: false } : null;
}

/** A late line's mark in the rail under the bars; `words` where there is room for them. */
interface LateMark {
  readonly lineId: string;
  readonly x: number;
  readonly words: string;
}

/** Where a due date stands. */
interface DueMark {
  readonly due: number;
  readonly x: number;
}

const MARK_PX = 12;

/** One mark for each late line that ends in sight, none closer than a mark is wide; the words say how late. */
export function lateMarks(lane: Lane, scale: Scale): LateMark[] {
  const late = barsIn(lane, scale.from, endOf(scale)).filter((bar) => bar.last && bar.tardiness > 0);
  const marks: LateMark[] = [];
  let free = -Infinity;
  late.forEach((bar, i) => {
    const x = xOf(scale, bar.end);
    const next = late[i + 1] ? xOf(scale, late[i + 1]!.end) : Infinity;
    if (x < free || x > scale.width + MARK_PX) return;
    const words = `${shortDuration(bar.tardiness)} late`;
    const width = MARK_PX + words.length * BOLD_CHARACTER_PX;
    const fits = x + width < next && x + width < scale.width + MARK_PX;
    marks.push({ lineId: bar.lineId, x, words: fits ? words : '' });
    free = x + (fits ? width : MARK_PX);
  });
  return marks;
}

/** The due dates in sight, none closer than a mark is wide. */
export function dueMarks(lane: Lane, scale: Scale): DueMark[] {
  const marks: DueMark[] = [];
  for (const due of lane.dues) {
    const x = xOf(scale, due);
    if (x < 0 || x > scale.width) continue;
    const before = marks.at(-1);
    if (before === undefined || x - before.x >= MARK_PX) marks.push({ due, x });
  }
  return marks;
}
