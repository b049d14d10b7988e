import { shortDuration } from '../../core/units/duration.ts';
import { barsIn, type Bar, type Lane } from './lanes.ts';
import { endOf, xOf, type Scale } from './scale.ts';

/** Words on a bar: where they may stand and as many lines as fit. */
export interface Label {
  readonly bar: Bar;
  readonly x: number;
  readonly width: number;
  readonly lines: readonly string[];
}

const LEAST_PX = 30;
const WORDS_PX = 74;
const PAD_PX = 5;
/** What a letter takes in the widest of the system's fonts that tokens.css names. */
export const CHARACTER_PX = 7;
const BOLD_CHARACTER_PX = 7.8;

const shortened = (text: string, width: number): string => {
  const fits = Math.floor(width / CHARACTER_PX);
  return text.length <= fits ? text : `${text.slice(0, Math.max(1, fits - 1)).trimEnd()}…`;
};

/** The widest part of a bar on which words can stand: an open stretch, cut to the window. */
function roomOn(bar: Bar, scale: Scale): { x: number; width: number } {
  let best = { x: 0, width: 0 };
  for (const piece of bar.pieces) {
    const left = Math.max(0, xOf(scale, piece.start));
    const width = Math.min(scale.width, xOf(scale, piece.end)) - left;
    if (width > best.width) best = { x: left, width };
  }
  return best;
}

/** Labels for the bars in sight that are wide enough, at most `maxLines` lines each. */
export function labelsOf(lane: Lane, scale: Scale, maxLines: number): Label[] {
  return barsIn(lane, scale.from, endOf(scale)).flatMap((bar) => {
    if ((bar.end - bar.start) / scale.perPixel < LEAST_PX) return [];
    const { x, width } = roomOn(bar, scale);
    const room = width - 2 * PAD_PX;
    if (width < LEAST_PX) return [];
    if (bar.lineId.length * BOLD_CHARACTER_PX > room) return [];
    const more = [bar.partName, `${bar.quantity} pieces`, bar.customer].map((text) => shortened(text, room));
    const lines = [bar.lineId, ...(width >= WORDS_PX ? more : [])].slice(
      0,
      Math.floor(maxLines / bar.levels),
    );
    if (lines.length === 0) return [];
    return [{ bar, x: x + PAD_PX, width: room, lines }];
  });
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
