import type { ReactNode } from 'react';
import { stepWord } from '../../../core/part/stage.ts';
import type { MetalMissing } from '../../../core/planning/metal-missing.ts';
import { blanksWords } from '../../../core/report/blank-words.ts';
import { metalWords } from '../../../core/report/metal-words.ts';
import { metalName } from '../../../core/shop/metal-name.ts';
import { formatClock, formatWall, formatWallDate } from '../../../core/time/wall.ts';
import { instant } from '../../../core/units/brand.ts';
import { formatDuration } from '../../../core/units/duration.ts';
import { formatCutLength } from '../../../core/units/length.ts';
import styles from '../../gantt/reading.module.css';
import type { Chosen } from './chosen.ts';

const Row = ({ label, children }: { label: string; children: ReactNode }) => (
  <>
    <dt>{label}</dt>
    <dd>{children}</dd>
  </>
);

/** What is told of a bar beside the pointer, or beside the bar that the keys stand on. */
export function BarCard({
  chosen,
  lacks,
  now,
}: {
  chosen: Chosen;
  lacks: MetalMissing | undefined;
  now: number;
}) {
  const { shop, bar, lane, operation } = chosen;
  const { timeZone } = shop.settings;
  const seconds = operation.machines.find(({ id }) => id === lane.machine.id)?.seconds;
  const wall = (at: number) => formatWall(instant(at), timeZone);
  const marks = [bar.rush && 'rush', bar.started && 'started', bar.pinned && 'pinned'].filter(Boolean);
  return (
    <>
      <p className={styles.cardTitle}>
        {bar.lineId} {stepWord[operation.stage]}
      </p>
      <p>{bar.customer}</p>
      <dl className={styles.cardFacts}>
        <Row label="Part">{bar.partName}</Row>
        <Row label="Metal">{metalName(shop, operation.line)}</Row>
        <Row label="Pieces">
          {blanksWords(operation.quantity, operation.extra)} ×{' '}
          {formatCutLength(operation.line.lengthMm, shop.settings)}
        </Row>
        {seconds !== undefined && <Row label="Work">{formatDuration(seconds)}</Row>}
        <Row label="When">
          {wall(bar.start)} – {wall(bar.end)}
        </Row>
        <Row label="Due">
          {formatWallDate(instant(bar.due), timeZone)}, {formatClock(instant(bar.due), timeZone)}
        </Row>
        {marks.length > 0 && <Row label="Marks">{marks.join(', ')}</Row>}
      </dl>
      {bar.tardiness > 0 && <p className={styles.cardLate}>▲ {formatDuration(bar.tardiness)} late</p>}
      {lacks &&
        metalWords(shop, lacks, now).map((words) => (
          <p key={words} className={styles.cardWarn}>
            ◇ {words}
          </p>
        ))}
    </>
  );
}
