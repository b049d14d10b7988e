import { ArrowDown, ArrowUp } from 'lucide-react';
import { isOrderOf } from '../../../../core/part/bend-steps.ts';
import type { Part } from '../../../../core/part/part.ts';
import { movesSentence, type BendList as Bends } from '../../../../core/report/bend-words.ts';
import { Button } from '../../../ui/button.tsx';
import { IconButton } from '../../../ui/icon-button.tsx';
import { Tag } from '../../../ui/tag.tsx';
import styles from '../../../form/form.module.css';
import { Group } from '../../../form/form-frame.tsx';
import { AngleLegend } from './angle-legend.tsx';
import look from './parts.module.css';
import { ColumnHeads } from '../../../ui/column-heads.tsx';

interface Props {
  part: Part;
  bends: Bends;
  /** null: the order is the pattern's, and cannot be changed here. */
  onChange: ((bendOrder: string[] | null) => void) | null;
}

/** The steps with two neighbours changed round; null where a hem would be closed before it is folded. */
function swapped({ profile }: Part, steps: readonly string[], at: number): string[] | null {
  const next = [...steps.slice(0, at), steps[at + 1] ?? '', steps[at] ?? '', ...steps.slice(at + 2)];
  return isOrderOf(profile, next) ? next : null;
}

/** How the brake makes the part, step by step; the shop may put the steps in its own order. */
export function BendList({ part, bends: { order, rows, note }, onChange }: Props) {
  const steps = order.steps.map(({ step }) => step);
  if (steps.length === 0) return null;
  const own = part.bendOrder !== null;
  return (
    <Group
      title="Bend list"
      note={`${own ? 'Your own order.' : 'An order found to clear usual tools, with the fewest turns.'} ${movesSentence(order)} Prove it on a test piece: the maker’s manual and drawings of machine and tools decide.`}
      end={
        own &&
        onChange && (
          <Button small onPress={() => onChange(null)}>
            Use the order found
          </Button>
        )
      }
    >
      <table className={look.bends} aria-label="Bend list">
        <thead>
          <tr>
            <ColumnHeads heads={['No.', 'Step', 'Angle', 'Paint', 'Edge at gauge']} />
            {onChange && <th scope="col" aria-label="Move" />}
          </tr>
        </thead>
        <tbody>
          {rows.map((row, i) => (
            <tr key={row.step}>
              <td>{i + 1}</td>
              <th scope="row">
                {row.before && <span className={styles.note}>{row.before}, then </span>}
                <span className={look.whole}>{row.step},</span> {row.direction}{' '}
                {row.collides && <Tag look="warn">meets the tools</Tag>}
              </th>
              <td>{row.angle}</td>
              <td>{row.paint}</td>
              <td>{row.back}</td>
              {onChange && (
                <td>
                  <Move what={row.step} steps={swapped(part, steps, i - 1)} up onChange={onChange} />
                  <Move what={row.step} steps={swapped(part, steps, i)} up={false} onChange={onChange} />
                </td>
              )}
            </tr>
          ))}
        </tbody>
      </table>
      {note && <p className={styles.warning}>{note}</p>}
      <AngleLegend />
    </Group>
  );
}

function Move({
  what,
  steps,
  up,
  onChange,
}: {
  what: string;
  steps: string[] | null;
  up: boolean;
  onChange: (order: string[]) => void;
}) {
  return (
    <IconButton
      label={`Move ${what} ${up ? 'up' : 'down'}`}
      icon={up ? ArrowUp : ArrowDown}
      small
      isDisabled={steps === null}
      onPress={() => steps && onChange(steps)}
    />
  );
}
