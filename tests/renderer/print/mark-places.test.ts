import { describe, expect, it } from 'vitest';
import { dimensioned } from '../../../core/part/dimensions.ts';
import { formingOf } from '../../../core/part/forming.ts';
import type { Hem } from '../../../core/part/profile.ts';
import { placeMarks } from '../../../renderer/screens/print/mark-places.ts';
import { layoutOf } from '../../../renderer/screens/print/part-drawing.tsx';
import { alongLine, boxOf, isWithin, meet } from '../../../renderer/screens/shop/parts/length-places.ts';
import { demoShop } from '../../core/demo-data/demo-shop.ts';
import { withPoints } from '../../support/writing.ts';

const shop = demoShop();
const material = shop.material[0]!;
const gauge = material.gauges[0]!;

describe.each(['in', 'mm'] as const)('a part drawn on paper, in %s', (units) => {
  /** Those of the shop, and the hemmed ones with hems that stay open, whose words are longer. */
  const parts = shop.part.flatMap((part) => {
    const { startHem, endHem } = part.profile;
    if (startHem === null && endHem === null) return [part];
    const opened = (hem: Hem | null): Hem | null => hem && { ...hem, kind: 'open', gapMm: 3.2 };
    const profile = { ...part.profile, startHem: opened(startHem), endHem: opened(endHem) };
    return [part, { ...part, id: `${part.id}, open hems`, profile }];
  });
  it.each(parts.map((part) => [part.id, part] as const))(
    '%s: no length, angle or name lies over another, over a line, or beyond the picture',
    (_, part) => {
      const drawn = dimensioned(
        part.profile,
        formingOf(material, gauge, {
          girthRule: 'computed',
          dieOpeningMm: null,
          tools: [],
          units: withPoints(units),
        }),
      );
      if (!drawn.ok) throw new Error(part.id);
      const layout = layoutOf(drawn.value, 0.6, withPoints(units));
      const { lengths, angles, hems, firstEdge } = placeMarks(drawn.value, layout);
      const labels = [
        ...lengths.map(({ label }) => label),
        ...angles,
        ...hems,
        ...(firstEdge ? [firstEdge] : []),
      ];
      const lines = [
        ...drawn.value.drawing.strokes,
        layout.paint,
        ...lengths.flatMap(({ line, extensions }) => [line, ...extensions]),
      ];
      const boxes = labels.map((label) => ({ text: label.text, ...boxOf(label, layout.height) }));
      const wrong = boxes.flatMap((own, i) => [
        ...(isWithin(own, layout.view) ? [] : [`${own.text} is cut`]),
        ...boxes
          .slice(i + 1)
          .flatMap((other) => (meet(own, other) ? [`${own.text} over ${other.text}`] : [])),
        ...(lines
          .flatMap(alongLine)
          .some(({ x, y }) => x > own.left && x < own.right && y > own.top && y < own.bottom)
          ? [`${own.text} over a line`]
          : []),
      ]);
      expect(wrong).toEqual([]);
    },
  );
});
