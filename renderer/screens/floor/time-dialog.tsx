import { useState } from 'react';
import { instant, type Instant } from '../../../core/units/brand.ts';
import { withinMinute } from '../../../core/edit/floor-times.ts';
import { formatClock, formatDayAndClock, formatWall } from '../../../core/time/wall.ts';
import { usePresent } from '../../queries/hooks.ts';
import { Button } from '../../ui/button.tsx';
import { DateTimeField } from '../../ui/date-time-field.tsx';
import { Dialog } from '../../ui/dialog.tsx';
import styles from './floor.module.css';

const words = {
  begin: { title: 'When did it really start?', label: 'Started on', act: 'Start from then' },
  end: { title: 'When did it really end?', label: 'Ended on', act: 'Done at that time' },
} as const;

/** How long ago a forgotten press usually was, in minutes. */
const AGO = [10, 20, 30] as const;

interface Props {
  what: keyof typeof words;
  timeZone: string;
  /** What was recorded before it; null when nothing was. */
  earliest: Instant | null;
  isOpen: boolean;
  onTime: (at: Instant) => void;
  onClose: () => void;
}

/** The time of a press that was forgotten: the present unless another is given. */
export function TimeDialog({ isOpen, ...rest }: Props) {
  return isOpen ? <OpenTimeDialog {...rest} /> : null;
}

function OpenTimeDialog({ what, timeZone, earliest, onTime, onClose }: Omit<Props, 'isOpen'>) {
  const present = usePresent();
  const [typed, type] = useState<Instant | null>(present);
  const { title, label, act } = words[what];
  const at = typed === null ? null : withinMinute(typed, earliest);
  const error = whyNotAt(at, earliest, present(), timeZone);
  return (
    <Dialog
      title={title}
      isOpen
      onClose={onClose}
      actions={
        <>
          <Button onPress={onClose}>Cancel</Button>
          <Button
            look="primary"
            isDisabled={error !== undefined}
            onPress={() => {
              if (at === null) return;
              onClose();
              onTime(at);
            }}
          >
            {act}
          </Button>
        </>
      }
    >
      <div className={styles.ago}>
        {AGO.map((minutes) => {
          const then = instant(present() - 60 * minutes);
          return (
            <Button
              key={minutes}
              isDisabled={whyNotAt(then, earliest, present(), timeZone) !== undefined}
              onPress={() => {
                onClose();
                onTime(then);
              }}
            >
              {`${minutes} min ago`}
            </Button>
          );
        })}
      </div>
      <DateTimeField
        label={label}
        value={typed}
        timeZone={timeZone}
        usualClock={formatClock(present(), timeZone)}
        onChange={type}
        error={error}
        help={earliest === null ? undefined : `Not before ${formatDayAndClock(earliest, timeZone)}.`}
      />
    </Dialog>
  );
}

function whyNotAt(
  at: Instant | null,
  earliest: Instant | null,
  now: Instant,
  timeZone: string,
): string | undefined {
  if (at === null) return 'Needs a date and a time.';
  if (at > now) return `That is still to come: it is ${formatWall(now, timeZone)}.`;
  if (earliest !== null && at < earliest)
    return `Something else was recorded until ${formatDayAndClock(earliest, timeZone)}. Give a later time.`;
  return undefined;
}
