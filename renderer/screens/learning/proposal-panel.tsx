import { Check, CheckCheck } from 'lucide-react';
import { useState } from 'react';
import type { StandardUnit } from '../../../core/estimate/standards.ts';
import type { Proposal } from '../../../core/learn/propose.ts';
import type { Machine } from '../../../core/shop/machine.ts';
import type { Units } from '../../../core/units/length.ts';
import { usePresent } from '../../queries/hooks.ts';
import { Button } from '../../ui/button.tsx';
import { Panel } from '../../ui/page.tsx';
import { Tag } from '../../ui/tag.tsx';
import { WouldDoDialog } from '../../shell/would-do-dialog.tsx';
import styles from './learning.module.css';
import { acceptCommand, differs, rowsOf, withPartners, type ProposalRow } from './proposals.ts';
import { grouped } from '../../../core/grouped.ts';
import { writeNumber } from '../../../core/units/number.ts';

interface Props {
  title: string;
  machine: Machine;
  units: Units;
  proposals: readonly Proposal[];
  /** Why there are none, whole sentences. */
  refusal: string | null;
}

/** Figures in use beside those that finished work shows; each can be taken over, or all that differ. */
export function ProposalPanel({ title, machine, units, proposals, refusal }: Props) {
  const present = usePresent();
  const [taking, setTaking] = useState<readonly Proposal[] | null>(null);
  const differing = proposals.filter(differs);
  const take = (some: readonly Proposal[]) =>
    setTaking(proposals.filter((p) => some.some((one) => withPartners(proposals, one).includes(p))));
  const actions = (
    <Button icon={CheckCheck} isDisabled={differing.length === 0} onPress={() => take(differing)}>
      {differing.length === 0 ? 'Nothing differs' : `Accept all ${differing.length} that differ`}
    </Button>
  );
  return (
    <Panel title={title} actions={refusal === null ? actions : undefined}>
      {refusal !== null ? (
        <p className={styles.lead}>{refusal}</p>
      ) : (
        <div className={styles.scroll}>
          <table className={styles.table} aria-label={title}>
            <thead>
              <tr>
                <th scope="col">Figure</th>
                <th scope="col">In use</th>
                <th scope="col">Finished work shows</th>
                <th scope="col">Likely (90&nbsp;%)</th>
                <th scope="col">Operations</th>
                <th scope="col" className={styles.roomy}>
                  Share of all time
                </th>
                <th scope="col" aria-label="Verdict" />
                <th scope="col" aria-label="Accept" />
              </tr>
            </thead>
            <tbody>
              {rowsOf(machine, proposals, units).map((row) => (
                <Row key={row.proposal.key} row={row} units={units} onTake={() => take([row.proposal])} />
              ))}
            </tbody>
          </table>
        </div>
      )}
      {taking && (
        <WouldDoDialog
          title={`Accept what finished work shows of ${machine.name}`}
          act="Accept"
          command={acceptCommand(machine.id, taking, present())}
          onClose={() => setTaking(null)}
        >
          <ul>
            {rowsOf(machine, taking, units).map(({ proposal, name, unit }) => (
              <li key={proposal.key}>
                {`${name}: ${shown(proposal.present, unit, units)} → ${shown(proposal.proposed, unit, units)}`}
              </li>
            ))}
          </ul>
        </WouldDoDialog>
      )}
    </Panel>
  );
}

/** Three digits of a figure; what a machine's work shows is no finer. */
const figure = (value: number, { per }: StandardUnit, { decimals }: Units): string =>
  writeNumber(Number((value / per).toPrecision(3)), decimals);
const shown = (value: number, unit: StandardUnit, units: Units): string =>
  `${figure(value, unit, units)}\u00a0${unit.name}`;
const OUTLIERS_SHOWN = 40;

interface RowProps {
  row: ProposalRow;
  units: Units;
  onTake: () => void;
}

function Row({ row: { proposal, name, unit, together }, units, onTake }: RowProps) {
  const { present, proposed, interval, observations, explained, outliers } = proposal;
  const change = present === 0 ? 0 : proposed / present - 1;
  return (
    <tr>
      <th scope="row">
        {name}
        {together.length > 0 && (
          <span className={styles.note}>only together with: {together.join('; ')}</span>
        )}
        {outliers.length > 0 && (
          <details className={styles.note}>
            <summary>{`${outliers.length} far off, hardly counted`}</summary>
            {outliers.slice(0, OUTLIERS_SHOWN).join(', ')}
            {outliers.length > OUTLIERS_SHOWN && ` and ${outliers.length - OUTLIERS_SHOWN} more`}
          </details>
        )}
      </th>
      <td>{shown(present, unit, units)}</td>
      <td>
        <strong>{shown(proposed, unit, units)}</strong>{' '}
        <span
          className={styles.note}
        >{`${change >= 0 ? '+' : '−'}${Math.abs(Math.round(change * 100))} %`}</span>
      </td>
      <td>{`${figure(interval[0], unit, units)} to ${shown(interval[1], unit, units)}`}</td>
      <td>{grouped(observations)}</td>
      <td className={styles.roomy}>{`${Math.round(explained * 100)} %`}</td>
      <td className={styles.verdict}>
        {differs(proposal) ? <Tag look="warn">differs</Tag> : <Tag>no clear difference</Tag>}
      </td>
      <td>
        <Button
          small
          icon={Check}
          aria-label={`Accept ${name}`}
          isDisabled={proposed === present}
          onPress={onTake}
        >
          Accept
        </Button>
      </td>
    </tr>
  );
}
