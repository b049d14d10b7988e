import { onTimePercent, type PlanFigures } from '../../../core/planning/figures.ts';
import { lateParts } from '../../../core/report/late-words.ts';
import { formatDayAndClock } from '../../../core/time/wall.ts';
import { formatHours } from '../../../core/units/duration.ts';
import { percent } from './load-days.ts';
import { counted } from '../../../core/units/count.ts';

interface ComparedFigure {
  readonly label: string;
  /** What the figure counts, for those who ask. */
  readonly help: string;
  readonly plan: string;
  /** Null where plain due-date order cannot be worked. */
  readonly yardstick: string | null;
  /** The difference in words. */
  readonly gain: string;
  readonly better: 'plan' | 'yardstick' | 'neither';
}

const points = (difference: number): string => {
  const whole = Math.round(Math.abs(difference) * 100);
  return counted(whole, 'point');
};

const lessOrMore = (format: (size: number) => string) => (difference: number) =>
  `${format(Math.abs(difference))} ${difference < 0 ? 'less' : 'more'}`;
const fewerOrMore = (difference: number): string =>
  `${Math.abs(difference)} ${difference < 0 ? 'fewer' : 'more'}`;

/** One line of the comparison: what it counts, how it is shown, and a difference in words. Less is better. */
interface FigureRow {
  readonly label: string;
  readonly help: string;
  readonly read: (figures: PlanFigures) => number;
  readonly show: (value: number) => string;
  readonly words: (difference: number) => string;
}

const row = (
  label: string,
  help: string,
  read: FigureRow['read'],
  show: FigureRow['show'],
  words: FigureRow['words'],
): FigureRow => ({ label, help, read, show, words });

const sooner = (difference: number): string =>
  `${formatHours(Math.abs(difference))} ${difference < 0 ? 'sooner' : 'later'}`;

/** On time comes negative: less is better. */
function rowsIn(timeZone: string): readonly FigureRow[] {
  const wall = (at: number): string => (at === 0 ? 'nothing planned' : formatDayAndClock(at, timeZone));
  return [
    row('Late lines', 'lines that end after their due date', (f) => f.lateLines, String, fewerOrMore),
    row(
      'Lines on time',
      'share of open lines that end by their due date',
      (f) => -f.onTimeShare,
      (v) => onTimePercent(-v),
      (d) => `${points(d)} ${d < 0 ? 'higher' : 'lower'}`,
    ),
    row(
      'Hours late',
      'added up over the late lines',
      (f) => f.tardiness,
      formatHours,
      lessOrMore(formatHours),
    ),
    row(
      'Already overdue when planned',
      'of the hours late: no order of the work saves them',
      (f) => lateParts(f).overdue,
      formatHours,
      lessOrMore(formatHours),
    ),
    row(
      'The rest of the hours late',
      'what the order of the work decides',
      (f) => lateParts(f).rest,
      formatHours,
      lessOrMore(formatHours),
    ),
    row('Changeovers', 'how often a machine is changed over', (f) => f.changeovers, String, fewerOrMore),
    row(
      'Changeover time',
      'hours that machines spend changing over',
      (f) => f.changeoverSeconds,
      formatHours,
      lessOrMore(formatHours),
    ),
    row(
      'Changeover share',
      'of work and changeover together',
      (f) => f.changeoverShare,
      percent,
      (d) => `${points(d)} ${d < 0 ? 'less' : 'more'}`,
    ),
    row('All done', 'when the last planned operation is done', (f) => f.lastEnd ?? 0, wall, sooner),
  ];
}

/** This plan beside orders by due date without batching, figure by figure. */
export const comparedFigures = (
  plan: PlanFigures,
  yardstick: PlanFigures | null,
  timeZone: string,
): ComparedFigure[] => rowsIn(timeZone).map((one) => compared(one, plan, yardstick));

function compared(
  { label, help, read, show, words }: FigureRow,
  plan: PlanFigures,
  yardstick: PlanFigures | null,
): ComparedFigure {
  const [mine, theirs] = [read(plan), yardstick && read(yardstick)];
  const texts = { label, help, plan: show(mine), yardstick: theirs === null ? null : show(theirs) };
  if (theirs === null) return { ...texts, gain: 'nothing to compare with', better: 'neither' };
  if (texts.plan === texts.yardstick) return { ...texts, gain: 'the same', better: 'neither' };
  return { ...texts, gain: words(mine - theirs), better: mine < theirs ? 'plan' : 'yardstick' };
}

/** The gain in one sentence. */
export function gainSentence(plan: PlanFigures, yardstick: PlanFigures | null): string {
  const left =
    plan.leftOut === 0
      ? ''
      : ` ${counted(plan.leftOut, 'line is', 'lines are')} in neither: the board names what is missing for ${plan.leftOut === 1 ? 'it' : 'them'}.`;
  if (plan.lines === 0) return `Nothing is planned yet.${left}`;
  if (yardstick === null)
    return 'Plain due-date order cannot be worked here, so there is nothing to compare with.';
  const late = yardstick.lateLines - plan.lateLines;
  const saved = yardstick.changeoverSeconds - plan.changeoverSeconds;
  const lines =
    late === 0
      ? 'as many late lines'
      : `${Math.abs(late)} ${late > 0 ? 'fewer' : 'more'} late ${Math.abs(late) === 1 ? 'line' : 'lines'}`;
  const changing =
    saved === 0
      ? 'the same changeover time'
      : `${formatHours(Math.abs(saved))} ${saved > 0 ? 'less' : 'more'} changeover`;
  return `Against orders in due-date order, without batching: ${lines} and ${changing}.${left}`;
}
