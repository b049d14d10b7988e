import { create } from 'zustand';
import { metalWords } from '../../../../core/shop/metal-name.ts';
import type { Shop } from '../../../../core/shop/state.ts';
import { mostAsked } from './most-asked.ts';

/** By part: the metal chosen to look at it in. Kept while other screens are open, so that what is printed is what was seen. */
interface MetalsChosen {
  readonly byPart: Readonly<Record<string, string>>;
  readonly choose: (partId: string, metal: string) => void;
}

const useMetalsChosen = create<MetalsChosen>((set) => ({
  byPart: {},
  choose: (partId, metal) => set(({ byPart }) => ({ byPart: { ...byPart, [partId]: metal } })),
}));

/** The metals that a part can be looked at in, and the one it is shown in: as chosen, else as most of its lines. */
export function useMetalShown(shop: Shop, partId: string) {
  const wanted = useMetalsChosen(({ byPart }) => byPart[partId]);
  const choose = useMetalsChosen((state) => state.choose);
  const options = shop.material.flatMap((material) =>
    material.gauges.map((gauge) => ({
      id: `${material.id} ${gauge.label}`,
      name: metalWords({ gauge: gauge.label, material: material.name }),
      material,
      gauge,
    })),
  );
  const asked = mostAsked(shop, partId);
  const usual = `${asked?.materialId} ${asked?.gauge}`;
  const chosen = options.find(({ id }) => id === (wanted ?? usual)) ?? options[0];
  return { options, chosen, choose: (metal: string) => choose(partId, metal) };
}
