import { hits } from '../../../../core/part/girth.ts';
import type { RowOf, Shop } from '../../../../core/shop/state.ts';
import { MM_PER_FOOT } from '../../../../core/units/length.ts';
import { Section } from '../../../form/section.tsx';
import { PartForm } from './part-form.tsx';
import { counted } from '../../../../core/units/count.ts';

/** Sheet comes in lengths of about ten feet, and so does most trim (common practice, no source). */
const usualLengthMm = (units: 'in' | 'mm'): number => (units === 'in' ? 10 * MM_PER_FOOT : 3000);

const freshPart = ({ settings }: Shop): RowOf<'part'> => ({
  id: '',
  name: '',
  profile: {
    flangesMm: [NaN, NaN],
    bends: [{ angle: 90, direction: 'up', radiusMm: null }],
    startHem: null,
    endHem: null,
    measured: 'outside',
    paintedSide: 'up',
  },
  lengthMm: usualLengthMm(settings.units),
  bendOrder: null,
  family: null,
  extraBlanks: null,
  steps: [],
  note: '',
  revision: 0,
});

const shape = ({ profile, family }: RowOf<'part'>): string => {
  if (family?.is === 'size') return `a size of ${family.of}`;
  if (hits(profile) === 0) return 'flat';
  const { bends, startHem, endHem } = profile;
  const hems = (startHem ? 1 : 0) + (endHem ? 1 : 0);
  return `${counted(bends.length, 'bend')}${hems ? `, ${counted(hems, 'hem')}` : ''}`;
};

export const Parts = ({ shop }: { shop: Shop }) => (
  <Section
    kind="part"
    path="parts"
    noun="part"
    rows={shop.part}
    entry={(part) => ({ title: part.name, detail: `${part.id}, ${shape(part)}` })}
    fresh={() => freshPart(shop)}
    purpose="A piece you make, with its cross-section: blanks, times and machine limits are worked out from it."
    form={(row, isNew, onSaved) => <PartForm shop={shop} row={row} isNew={isNew} onSaved={onSaved} />}
  />
);
