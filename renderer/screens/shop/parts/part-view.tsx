import type { Part } from '../../../../core/part/part.ts';
import type { Settings } from '../../../../core/shop/settings.ts';
import type { Shop } from '../../../../core/shop/state.ts';
import { formatCutLength, formatCutSize, formatSum, type Units } from '../../../../core/units/length.ts';
import { formatWeight } from '../../../../core/units/weight.ts';
import { formatMoney, type MoneyStyle } from '../../../../core/units/money.ts';
import { Select } from '../../../ui/choice.tsx';
import { Tag } from '../../../ui/tag.tsx';
import styles from '../../../form/form.module.css';
import { Fields, Group } from '../../../form/form-frame.tsx';
import { useMetalShown } from './metal-shown.ts';
import { BendList } from './bend-list.tsx';
import { partFigures, type MachineFindings, type PartFigures } from './part-figures.ts';
import look from './parts.module.css';
import { ProfileDrawing } from './profile-drawing.tsx';
import { writeFixed } from '../../../../core/units/number.ts';

interface Props {
  shop: Shop;
  part: Part;
  /** null: its bend order cannot be changed here. */
  onOrder: ((bendOrder: string[] | null) => void) | null;
}

/** How a part comes out in a metal of the shop: drawing, blank, work, and what speaks against it on each machine. */
export function PartView({ shop, part, onOrder }: Props) {
  const { options, chosen, choose } = useMetalShown(shop, part.id);
  if (!chosen)
    return <p className={styles.note}>Add a material with a gauge to see the drawing and the blank.</p>;
  const figures = partFigures(shop, part, chosen.material, chosen.gauge);
  return (
    <Group title="Drawing and blank">
      <Fields>
        <Select label="Metal" options={options} value={chosen.id} onChange={choose} />
      </Fields>
      {typeof figures === 'string' ? (
        <p className={styles.note} role="status">
          {figures}
        </p>
      ) : (
        <>
          <ProfileDrawing
            drawing={figures.drawing}
            thicknessMm={chosen.gauge.thicknessMm}
            label={`Cross-section of ${part.name || part.id}`}
            lengths={{ flangesMm: part.profile.flangesMm, units: shop.settings }}
          />
          <p className={styles.note}>The dashed mark is on the painted side.</p>
          <Figures figures={figures} settings={shop.settings} />
          <BendList part={part} bends={figures.bends} onChange={onOrder} />
          <Findings machines={figures.machines} />
        </>
      )}
    </Group>
  );
}

function Figures({
  figures: { blank, cost, steps, hits },
  settings,
}: {
  figures: PartFigures;
  settings: Settings;
}) {
  return (
    <>
      <dl className={look.figures}>
        <Figure name="Girth" value={formatCutLength(blank.girthMm, settings)} />
        <Figure name="Blank" value={formatCutSize(blank.girthMm, blank.lengthMm, settings)} />
        <Figure name="Weight" value={formatWeight(blank.weightKg, settings)} />
        <Figure name="Area" value={formatArea(blank.areaM2, settings)} />
        <Figure name="Cost of its metal" value={costWords(cost, settings)} />
        <Figure name="Hits" value={String(hits)} />
      </dl>
      <GirthSum steps={steps} girthMm={blank.girthMm} units={settings} />
    </>
  );
}

/** The lengths as decimals, for the parts shown add up to the sum shown; the blank is cut to its one figure. */
function GirthSum({ steps, girthMm, units }: Pick<PartFigures, 'steps'> & { girthMm: number; units: Units }) {
  const shown = formatSum(
    steps.map(({ addMm }) => addMm),
    units,
  );
  return (
    <details>
      <summary>How the girth adds up</summary>
      <table className={look.steps}>
        <tbody>
          {steps.map((step, i) => (
            <tr key={i}>
              <th scope="row">
                {step.label}
                {step.reason && <span className={styles.note}> {step.reason}</span>}
              </th>
              <td>{shown.parts[i]}</td>
            </tr>
          ))}
          <tr className={look.total}>
            <th scope="row">girth, cut as {formatCutLength(girthMm, units)}</th>
            <td>{shown.sum}</td>
          </tr>
        </tbody>
      </table>
    </details>
  );
}

const formatArea = (areaM2: number, units: Units): string =>
  units.units === 'in'
    ? `${writeFixed(areaM2 / 0.3048 ** 2, 2, units)} ft²`
    : `${writeFixed(areaM2, 3, units)} m²`;

/** The blank's own area at the price of the stock kept; the run's scrap comes on top. */
function costWords(cost: PartFigures['cost'], money: MoneyStyle): string {
  if (cost === null) return 'no stock of it';
  const [low, high] = [formatMoney(cost.lowCents, money), formatMoney(cost.highCents, money)];
  return low === high ? low : `${low} – ${high}`;
}

const Figure = ({ name, value }: { name: string; value: string }) => (
  <div>
    <dt>{name}</dt>
    <dd>{value}</dd>
  </div>
);

const Findings = ({ machines }: { machines: readonly MachineFindings[] }) => (
  <Group
    title="On your machines"
    note="Worked out from the limits you entered. The machine maker’s manual, local codes and your employer’s procedure decide."
  >
    <ul className={look.findings}>
      {machines.map(({ machineName, findings }) => (
        <li key={machineName}>
          <strong>{machineName}</strong>
          {findings.length === 0 && <Tag look="fine">no objection</Tag>}
          {findings.map((finding, i) => (
            <p key={i}>
              <Tag look={finding.severity === 'stop' ? 'late' : 'warn'}>
                {finding.severity === 'stop' ? 'cannot' : 'check first'}
              </Tag>{' '}
              {finding.message} {finding.advice} <span className={styles.note}>({finding.source})</span>
            </p>
          ))}
        </li>
      ))}
    </ul>
  </Group>
);
