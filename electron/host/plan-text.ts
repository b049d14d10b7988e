import type { Why } from '../../core/planning/answers.ts';
import { cautionsFor } from '../../core/report/cautions.ts';
import { dispatchLists, type DispatchList, type DispatchRow } from '../../core/report/dispatch.ts';
import type { PlanFigures } from '../../core/planning/figures.ts';
import type { PlanView } from '../../core/planning/plan-view.ts';
import { lateParts } from '../../core/report/late-words.ts';
import { whyText, whyWords } from '../../core/report/why-words.ts';
import { metalWords } from '../../core/shop/metal-name.ts';
import type { Shop } from '../../core/shop/state.ts';
import { formatClock, formatDayAndClock, formatWall, formatWallDate } from '../../core/time/wall.ts';
import { instant, type Instant } from '../../core/units/brand.ts';
import { formatDuration, formatHours } from '../../core/units/duration.ts';
import { formatCutLength } from '../../core/units/length.ts';
import { counted } from '../../core/units/count.ts';
import { formatPercent } from '../../core/units/number.ts';
import type { Settings } from '../../core/shop/settings.ts';

/** What the command line says about a plan. */
export interface PlanReport {
  readonly shop: Shop;
  readonly now: Instant;
  readonly seconds: number;
  readonly seed: number;
  readonly found: PlanView;
  /** The same work by due date, without batching. */
  readonly dueDateOrder: PlanView;
  /** About one line of the plan found, where it was asked for. */
  readonly why: Why | null;
}

const EVER = instant(Number.MAX_SAFE_INTEGER);

/** The queues, the lines left out, and the comparison with due-date order, as lines for a terminal. */
export function planText({ shop, now, seconds, seed, found, dueDateOrder, why }: PlanReport): string {
  const { timeZone, name } = shop.settings;
  const lists = dispatchLists(shop, found, instant(0), EVER);
  return [
    `${name}: plan from ${formatDayAndClock(now, timeZone)} (${timeZone}), searched ${seconds} s, seed ${seed}`,
    ...lists.flatMap((list) => machineText(shop, list)),
    ...unplannedText(found),
    ...(why ? ['', ...whyText(whyWords(shop, why))] : []),
    '',
    ...comparisonText(found.figures, dueDateOrder.figures, shop.settings),
    '',
    cautionsFor('shear').governs,
  ].join('\n');
}

function machineText({ settings }: Shop, { machine, runs }: DispatchList): string[] {
  const { timeZone } = settings;
  const operations = runs.reduce((sum, { rows }) => sum + rows.length, 0);
  const rowText = (row: DispatchRow): string => {
    const due = row.tardiness > 0 ? `  LATE by ${formatDuration(row.tardiness)}` : '';
    const piece = `${row.part.name} × ${row.line.quantity}, ${formatCutLength(row.line.lengthMm, settings)}`;
    const sheet = metalWords({ gauge: row.line.gauge, colour: row.colourName });
    return `  ${span(row.start, row.end, timeZone)}  ${row.line.id.padEnd(9)} ${piece.padEnd(34)} ${sheet}${due}`;
  };
  return [
    '',
    `${machine.id}  ${machine.name}: ${counted(operations, 'operation')} in ${counted(runs.length, 'run')}`,
    ...runs.flatMap(({ changeover, rows }) => [
      ...(changeover
        ? [
            `  ${formatDayAndClock(changeover.start, timeZone)}  changeover ${formatDuration(changeover.seconds)}: ` +
              changeover.steps
                .map((s) => `${s.attribute} ${s.from === null ? '' : `${s.from} `}→ ${s.to}`)
                .join(', '),
          ]
        : []),
      ...rows.map(rowText),
    ]),
  ];
}

/** "Tue 24 Nov 07:30 – 09:10", the second day named where it is another. */
function span(start: Instant, end: Instant, timeZone: string): string {
  const [from, to] = [formatWallDate(start, timeZone), formatWallDate(end, timeZone)];
  const until = from === to ? formatClock(end, timeZone) : formatWall(end, timeZone);
  return `${from} ${formatClock(start, timeZone)} – ${until}`.padEnd(30);
}

const unplannedText = ({ unplannable }: PlanView): string[] =>
  unplannable.length === 0
    ? []
    : [
        '',
        'Cannot be planned:',
        ...unplannable.map(({ subject, message, advice }) => `  ${subject}: ${message} ${advice}`),
      ];

function comparisonText(plan: PlanFigures, dueDate: PlanFigures, settings: Settings): string[] {
  const rows: [string, (figures: PlanFigures) => string][] = [
    ['Late lines', (f) => `${f.lateLines} of ${f.lines + f.leftOut}`],
    ['Cannot be planned', (f) => String(f.leftOut)],
    ['Hours late', (f) => formatHours(f.tardiness)],
    ['  already overdue when planned', (f) => formatDuration(lateParts(f).overdue)],
    ['  the rest', (f) => formatDuration(lateParts(f).rest)],
    ['Hours late × importance', (f) => formatHours(f.weightedTardiness)],
    ['Changeovers', (f) => `${f.changeovers}, ${formatDuration(f.changeoverSeconds)}`],
    ['Changeover share', (f) => formatPercent(f.changeoverShare, settings)],
    ['All done', (f) => (f.lastEnd === null ? '–' : formatWallDate(instant(f.lastEnd), settings.timeZone))],
  ];
  const cell = (text: string): string => text.padEnd(18);
  const head = (text: string): string => text.padEnd(32);
  return [
    `${head('')}${cell('this plan')}due-date order`,
    ...rows.map(([title, show]) => `${head(title)}${cell(show(plan))}${show(dueDate)}`),
  ];
}

/** The same for programs: instants in epoch seconds, durations in seconds. */
export function planJson({ shop, now, seconds, seed, found, dueDateOrder, why }: PlanReport): string {
  const lines = new Map(shop.line.map((line) => [line.id, line]));
  const machines = shop.machine.map(({ id, name }) => ({
    id,
    name,
    queue: found.schedule.operations
      .filter((o) => o.machine === id)
      .map((o) => {
        const line = lines.get(o.job);
        return {
          operation: o.operation,
          line: o.job,
          part: line?.partId,
          quantity: line?.quantity,
          gauge: line?.gauge,
          colour: line?.colourId,
          changeoverStart: o.changeoverStart,
          changeoverSeconds: o.changeoverSeconds,
          start: o.start,
          end: o.end,
        };
      }),
  }));
  return JSON.stringify({
    shop: shop.settings.name,
    timeZone: shop.settings.timeZone,
    now,
    seconds,
    seed,
    objective: found.schedule.objective,
    terms: found.schedule.terms,
    figures: found.figures,
    dueDateOrder: dueDateOrder.figures,
    notPlanned: found.unplannable,
    machines,
    ...(why && { why, words: whyText(whyWords(shop, why)) }),
  });
}
