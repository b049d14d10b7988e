import type { FloorWork } from '../../../core/report/floor.ts';
import { formatWall, formatWallDate } from '../../../core/time/wall.ts';
import { formatDuration } from '../../../core/units/duration.ts';
import { Tag } from '../../ui/tag.tsx';

/** Due when, and how the plan stands against it. */
export function Standing({ work: { row, operation }, timeZone }: { work: FloorWork; timeZone: string }) {
  return (
    <>
      {row.tardiness > 0 ? (
        <Tag look="late">{`${formatDuration(row.tardiness)} late`}</Tag>
      ) : (
        <Tag look="fine">
          {`due ${formatWallDate(row.due, timeZone)} ${formatWall(row.due, timeZone).slice(4)}`}
        </Tag>
      )}
      {row.rush && <Tag look="warn">rush</Tag>}
      {operation.line.makeUpFor && <Tag look="accent">{`make-up for ${operation.line.makeUpFor}`}</Tag>}
    </>
  );
}
