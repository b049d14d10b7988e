import { drawProfile } from '../../../core/part/drawing.ts';
import { formatCutLength, formatCutSize } from '../../../core/units/length.ts';
import { blanksWords } from '../../../core/report/blank-words.ts';
import type { DispatchRow } from '../../../core/report/dispatch.ts';
import type { Stage } from '../../../core/part/stage.ts';
import { metalWords } from '../../../core/shop/metal-name.ts';
import type { Settings } from '../../../core/shop/settings.ts';
import { formatDuration } from '../../../core/units/duration.ts';
import { ProfileDrawing } from '../shop/parts/profile-drawing.tsx';
import { COLUMNS, until, when } from './paper-words.ts';
import { Notes } from '../../ui/notes.tsx';
import styles from './print.module.css';

interface Props {
  row: DispatchRow;
  stage: Stage;
  settings: Settings;
  withDate: boolean;
}

/** One operation, with room to write what came of it; under it what was noted. */
export const PaperRow = (props: Props) => (
  <>
    <Figures {...props} />
    {props.row.notes.length > 0 && (
      <tr className={styles.notes}>
        <td />
        <td colSpan={COLUMNS - 1}>
          <div className={styles.note}>
            <strong>Note</strong>
            <Notes notes={props.row.notes} />
          </div>
        </td>
      </tr>
    )}
  </>
);

function Figures({ row, stage, settings, withDate }: Props) {
  const { timeZone } = settings;
  const { line, part, blank, next } = row;
  const length = formatCutLength(blank.lengthMm, settings);
  return (
    <tr className={row.notes.length > 0 ? styles.noted : styles.row}>
      <td className={styles.place}>{row.position}</td>
      <td>
        {wrapped(when(row.start, timeZone, withDate))}
        <br />
        {wrapped(until(row.start, row.end, timeZone, withDate))}
      </td>
      <td>
        <strong>{line.id}</strong>
        {row.rush && <strong> RUSH</strong>}
        {row.unpublished && <strong> NEW</strong>}
        <br />
        {row.customer}
      </td>
      <td>
        {part.name}
        <br />
        {metalWords({ gauge: line.gauge, colour: row.colourName })}
        {row.lot !== '' && <div>{row.lot}</div>}
      </td>
      <td className={styles.figure}>
        <Pieces row={row} />
      </td>
      <td>
        {stage === 'shear' ? (
          wrapped(formatCutSize(blank.girthMm, blank.lengthMm, settings), ' × ')
        ) : (
          <Profile row={row} length={length} />
        )}
      </td>
      <td>
        {wrapped(when(row.due, timeZone, true))}
        {row.tardiness > 0 && (
          <strong className={styles.late}>{`▲ late by ${formatDuration(row.tardiness)}`}</strong>
        )}
      </td>
      <td>
        {next ? (
          <>
            {next.machineName}
            <br />
            {wrapped(when(next.start, timeZone, withDate))}
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

/** How many, what of them is beyond the pieces, and how many people they take. */
const Pieces = ({ row: { quantity, extra, people } }: { row: DispatchRow }) => (
  <>
    {quantity}
    {extra.setUp + extra.spare > 0 && <div className={styles.beyond}>{blanksWords(quantity, extra)}</div>}
    {people > 1 && <div>{`${people} people`}</div>}
  </>
);

/** Words that a narrow column may break only after the last space (or `after`), so before a time of day. */
function wrapped(text: string, after = ' '): string {
  const at = text.lastIndexOf(after) + after.length;
  const unbroken = (words: string): string => words.trimEnd().replaceAll(' ', '\u00a0');
  return `${unbroken(text.slice(0, at))} ${unbroken(text.slice(at))}`;
}

/** Thin sheet, drawn small: its thickness does not show, so one thickness does for all. */
const DRAWN = { thicknessMm: 0.6, kFactor: 0.45, units: { units: 'in', decimals: 'point' } } as const;

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
