import { blanksWords } from '../../../core/report/blank-words.ts';
import type { ReactNode } from 'react';
import { drawProfile } from '../../../core/part/drawing.ts';
import { formingOf, blankBasisOf } from '../../../core/part/forming.ts';
import { hits } from '../../../core/part/girth.ts';
import { BLANK_ALONG } from '../../../core/report/rolling-words.ts';
import { bendListOf, type BendList } from '../../../core/report/bend-words.ts';
import type { FloorWork } from '../../../core/report/floor.ts';
import { metalWords } from '../../../core/shop/metal-name.ts';
import type { Part } from '../../../core/part/part.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { formatCutLength, formatCutSize } from '../../../core/units/length.ts';
import { classes } from '../../ui/classes.ts';
import { ProfileDrawing } from '../shop/parts/profile-drawing.tsx';
import styles from './floor.module.css';
import { counted, times } from '../../../core/units/count.ts';

interface FactProps {
  label: string;
  /** Leaves room for another beside it. */
  short?: boolean;
  children: ReactNode;
}

const Fact = ({ label, short = false, children }: FactProps) => (
  <div className={classes(styles.fact, short && styles.short)}>
    <dt>{label}</dt>
    <dd>{children}</dd>
  </div>
);

/** "4 bends, 1 hem: 6 hits, turn over once" */
function bendWords({ profile }: Part, { order }: BendList): string {
  const hems = [profile.startHem, profile.endHem].filter(Boolean).length;
  const folds = [
    profile.bends.length > 0 && counted(profile.bends.length, 'bend'),
    hems > 0 && counted(hems, 'hem'),
  ].filter(Boolean);
  const over = order.flips;
  const turned = over === 0 ? '' : `, turn over ${times(over)}`;
  return `${folds.join(', ')}: ${counted(hits(profile), 'hit')}${turned}`;
}

/** Step by step, as the part's own screen and its traveller have it. */
const Steps = ({ bends: { rows, note } }: { bends: BendList }) => (
  <>
    <ol className={styles.bends} aria-label="Bend list">
      {rows.map(({ step, direction, angle, before }) => (
        <li key={step}>
          {before && <small>{`${before}, then `}</small>}
          <strong>{`${step}, ${direction}`}</strong> {angle}
        </li>
      ))}
    </ol>
    {note && <small>{note}</small>}
  </>
);

/** What to take and what to make of it: the blank at the shear, the bends at the brake. */
export function WorkFacts({ shop, work: { row, operation } }: { shop: Shop; work: FloorWork }) {
  const { line, part, blank } = row;
  const material = shop.material.find(({ id }) => id === line.materialId);
  const colour = shop.colour.find(({ id }) => id === line.colourId);
  const { sheet } = operation;
  const gauge = material?.gauges.find(({ label }) => label === line.gauge);
  const bends =
    operation.stage === 'brake' && material && gauge
      ? bendListOf(part, material, gauge, blankBasisOf(shop))
      : null;
  return (
    <dl className={styles.facts}>
      <Fact label="Metal">
        <span className={styles.sheet}>
          {colour && (
            <svg viewBox="0 0 24 24" aria-hidden>
              <rect x="0.5" y="0.5" width="23" height="23" fill={colour.hex} stroke="var(--rule-strong)" />
            </svg>
          )}
          {metalWords({ gauge: line.gauge, colour: row.colourName })}
        </span>
        <small>{material?.name}</small>
        {row.lot !== '' && <small>{row.lot}</small>}
      </Fact>
      {operation.stage === 'shear' && (
        <>
          <Fact label="Blank, girth × length">
            {formatCutSize(blank.girthMm, blank.lengthMm, shop.settings)}
            <small>{BLANK_ALONG}</small>
          </Fact>
          {row.extra.setUp + row.extra.spare > 0 && (
            <Fact label="Blanks" short>
              {blanksWords(row.quantity, row.extra)}
            </Fact>
          )}
          <Fact label="Sheet size" short>
            {formatCutSize(sheet.widthMm, sheet.lengthMm, shop.settings)}
          </Fact>
        </>
      )}
      {row.tools !== null && <Fact label="Set up">{row.tools}</Fact>}
      {operation.stage !== 'shear' && (
        <Fact label="Length" short>
          {formatCutLength(line.lengthMm, shop.settings)}
        </Fact>
      )}
      {row.people > 0 && (
        <Fact label="People" short>
          {row.people === 1 ? 'one' : `${row.people}, or a lift aid`}
          {row.whyPeople !== '' && <small> {row.whyPeople}</small>}
        </Fact>
      )}
      {bends && (
        <Fact label={bendWords(part, bends)}>
          <Steps bends={bends} />
        </Fact>
      )}
    </dl>
  );
}

/** The part's cross-section with its lengths. */
export function WorkPicture({ shop, work: { row } }: { shop: Shop; work: FloorWork }) {
  const { line, part } = row;
  const material = shop.material.find(({ id }) => id === line.materialId);
  const gauge = material?.gauges.find(({ label }) => label === line.gauge);
  if (!material || !gauge) return null;
  const drawing = drawProfile(part.profile, formingOf(material, gauge, blankBasisOf(shop)));
  return (
    <figure className={styles.picture}>
      {drawing.ok && (
        <ProfileDrawing
          drawing={drawing.value}
          thicknessMm={gauge.thicknessMm}
          label={`Cross-section of ${part.name}`}
          lengths={{ flangesMm: part.profile.flangesMm, units: shop.settings, far: true }}
        />
      )}
      <figcaption>{part.name}</figcaption>
    </figure>
  );
}
