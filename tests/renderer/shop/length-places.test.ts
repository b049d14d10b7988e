import { describe, expect, it } from 'vitest';
import { drawProfile } from '../../../core/part/drawing.ts';
import { formingOf } from '../../../core/part/forming.ts';
import { formatLength } from '../../../core/units/length.ts';
import { boxOf, isWithin, meet, placeLengths } from '../../../renderer/screens/shop/parts/length-places.ts';
import { demoShop } from '../../core/demo-data/demo-shop.ts';
import { inches } from '../../support/writing.ts';

const shop = demoShop();
const material = shop.material[0]!;
const gauge = material.gauges[0]!;

describe.each([0.05, 0.08])('lengths of %f of the drawing', (share) => {
  it.each(shop.part.map((part) => [part.id, part] as const))(
    'of %s stand apart from each other and within the picture',
    (_, part) => {
      const drawn = drawProfile(
        part.profile,
        formingOf(material, gauge, { girthRule: 'computed', dieOpeningMm: null, tools: [], units: inches }),
      );
      if (!drawn.ok) throw new Error(part.id);
      const { box } = drawn.value;
      const size = Math.max(box.width, box.height);
      const [beside, above, height] = [size * (share === 0.08 ? 0.38 : 0.28), size * 0.12, size * share];
      const view = {
        ...{ left: box.left - beside, right: box.left + box.width + beside },
        ...{ top: box.top - above, bottom: box.top + box.height + above },
      };
      const { paint } = drawn.value;
      const y = paint.at.y + paint.towards.y * size * 0.022;
      const mark = { from: { x: paint.at.x - size * 0.1, y }, to: { x: paint.at.x + size * 0.1, y } };
      const places = placeLengths(drawn.value, { height, view, mark }, ({ number }) =>
        formatLength(part.profile.flangesMm[number - 1]!, inches),
      );
      const boxes = places.map((place) => boxOf(place, height));
      for (const own of boxes) {
        expect(isWithin(own, view)).toBe(true);
        const onMark = own.top < y && y < own.bottom && own.left < mark.to.x && mark.from.x < own.right;
        expect(onMark, 'over the mark of the painted side').toBe(false);
      }
      for (const [i, own] of boxes.entries())
        expect(boxes.slice(i + 1).some((other) => meet(own, other))).toBe(false);
    },
  );
});
