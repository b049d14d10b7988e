import { drawProfile } from '../../../core/part/drawing.ts';
import { formatCutLength, formatCutSize } from '../../../core/units/length.ts';
import type { DispatchRow } from '../../../core/report/dispatch.ts';
import type { Stage } from '../../../core/shop/machine.ts';
import { metalWords } from '../../../core/shop/metal-name.ts';
import type { Settings } from '../../../core/shop/settings.ts';
import { formatDuration } from '../../../core/units/duration.ts';
import { ProfileDrawing } from '../shop/parts/profile-drawing.tsx';
import { until, when } from './paper-words.ts';
import styles from './print.module.css';

interface Props {
  row: DispatchRow;
  stage: Stage;
  settings: Settings;
  withDate: boolean;
}

/** One operation, with room to write what came of it. */
export function PaperRow({ row, stage, settings: { timeZone, units }, withDate }: Props) {
  const { line, part, blank, next } = row;
  const length = formatCutLength(blank.lengthMm, units);
  return (
    <tr className={styles.row}>
      <td className={styles.place}>{row.position}</td>
      <td className={styles.times}>
        {when(row.start, timeZone, withDate)}
        <br />
        {until(row.start, row.end, timeZone, withDate)}
      </td>
      <td>
        <strong>{line.id}</strong>
        {row.rush && <strong> RUSH</strong>}
        <br />
        {row.customer}
      </td>
      <td className={styles.part}>
        {part.name}
        <br />
        {metalWords({ gauge: line.gauge, colour: row.colourName })}
      </td>
      <td className={styles.figure}>
        {row.quantity}
        {row.people > 1 && <div>{`${row.people} people`}</div>}
      </td>
      <td className={styles.piece}>
        {stage === 'shear' ? (
          formatCutSize(blank.girthMm, blank.lengthMm, units)
        ) : (
          <Profile row={row} length={length} />
        )}
      </td>
      <td className={styles.times}>
        {when(row.due, timeZone, true)}
        {row.tardiness > 0 && (
          <strong className={styles.late}>{`▲ late by ${formatDuration(row.tardiness)}`}</strong>
        )}
      </td>
      <td className={styles.times}>
        {next ? (
          <>
            {next.machineName}
            <br />
            {when(next.start, timeZone, withDate)}
          </>
        ) : (
          'finished'
        )}
      </td>
      <td className={styles.counts}>
        <span className={styles.tick} />
        <span className={styles.write} />
        <span className={styles.write} />
      </td>
    </tr>
  );
}

/** Thin sheet, drawn small: its thickness does not show, so one thickness does for all. */
const DRAWN = { thicknessMm: 0.6, kFactor: 0.45, units: 'in' } as const;

function Profile({ row: { part }, length }: { row: DispatchRow; length: string }) {
  const drawing = drawProfile(part.profile, DRAWN);
  return (
    <span className={styles.profile}>
      {drawing.ok && (
        <ProfileDrawing
          drawing={drawing.value}
          thicknessMm={DRAWN.thicknessMm}
          label={`Cross-section of ${part.name}`}
        />
      )}
      {length}
    </span>
  );
}
