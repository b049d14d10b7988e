import type { FloorWork } from '../../../core/report/floor.ts';
import { formatDayAndClock } from '../../../core/time/wall.ts';
import { shortDuration } from '../../../core/units/duration.ts';
import { Tag } from '../../ui/tag.tsx';

interface Props {
  work: FloorWork;
  timeZone: string;
  /** Room for little: what is late says by how much only. */
  brief?: boolean;
}

/** Due when, and how the plan stands against it. */
export function Standing({ work: { row, operation }, timeZone, brief = false }: Props) {
  return (
    <>
      {!(brief && row.tardiness > 0) && (
        <Tag look={row.tardiness > 0 ? 'plain' : 'fine'}>{`due ${formatDayAndClock(row.due, timeZone)}`}</Tag>
      )}
      {row.tardiness > 0 && <Tag look="late">{`${shortDuration(row.tardiness)} late`}</Tag>}
      {row.rush && <Tag look="warn">rush</Tag>}
      {row.unpublished && <Tag>new</Tag>}
      {operation.suspended && <Tag>suspended</Tag>}
      {operation.line.makeUpFor && <Tag look="accent">{`remake of ${operation.line.makeUpFor}`}</Tag>}
    </>
  );
}
