import { ChevronLeft, ChevronRight } from 'lucide-react';
import { useState } from 'react';
import type { Calendar } from '../../../../core/time/calendar.ts';
import { formatDuration } from '../../../../core/units/duration.ts';
import type { Instant } from '../../../../core/units/brand.ts';
import { IconButton } from '../../../ui/icon-button.tsx';
import styles from '../../../form/form.module.css';
import { Group } from '../../../form/form-frame.tsx';
import look from './calendars.module.css';
import { mondayOf, weekHours, type DayHours } from './week-hours.ts';
import { counted } from '../../../../core/units/count.ts';

const CLOCK_MARKS = [0, 6, 12, 18, 24];

/** A week of the calendar as it comes out: shifts less breaks and closures, plus overtime. */
export function WeekPicture({
  calendar,
  timeZone,
  now,
}: {
  calendar: Calendar;
  timeZone: string;
  now: Instant;
}) {
  const [weeks, setWeeks] = useState(0);
  const week = weekHours(calendar, mondayOf(now, weeks, timeZone), timeZone);
  const title =
    weeks === 0 ? 'This week' : `${counted(Math.abs(weeks), 'week')} ${weeks > 0 ? 'ahead' : 'ago'}`;
  return (
    <Group
      title={title}
      end={
        <span>
          <IconButton label="Week before" icon={ChevronLeft} small onPress={() => setWeeks(weeks - 1)} />
          <IconButton label="Week after" icon={ChevronRight} small onPress={() => setWeeks(weeks + 1)} />
        </span>
      }
    >
      {typeof week === 'string' ? (
        <p className={styles.warning} role="status">
          {week}
        </p>
      ) : (
        <>
          <div className={look.week} role="list" aria-label="Open hours by day">
            <div className={look.clock} aria-hidden>
              {CLOCK_MARKS.map((hour) => (
                <span key={hour} style={{ left: `${(hour / 24) * 100}%` }}>
                  {hour}:00
                </span>
              ))}
            </div>
            {week.days.map((day) => (
              <Day key={day.label} day={day} />
            ))}
          </div>
          <p className={styles.note}>{`${formatDuration(week.openSeconds)} open in the week.`}</p>
        </>
      )}
    </Group>
  );
}

const Day = ({ day }: { day: DayHours }) => (
  <div
    className={look.day}
    role="listitem"
    aria-label={`${day.label}: ${day.openSeconds > 0 ? `${formatDuration(day.openSeconds)} open` : 'closed'}`}
  >
    <span className={look.dayName}>{day.label}</span>
    <span className={look.track}>
      {day.spans.map((span) => (
        <span
          key={span.from}
          className={look.span}
          style={{ left: `${span.from * 100}%`, width: `${(span.to - span.from) * 100}%` }}
        />
      ))}
    </span>
    <span className={look.dayHours}>{day.openSeconds > 0 ? formatDuration(day.openSeconds) : 'closed'}</span>
  </div>
);
