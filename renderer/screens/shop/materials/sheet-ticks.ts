import type { FormRow } from '../../../../core/edit/command.ts';
import {
  newSheet,
  usualSheet,
  USUAL_SHEETS,
  type SheetMetal,
  type SheetSize,
} from '../../../../core/material/usual-sheets.ts';
import type { Shop } from '../../../../core/shop/state.ts';
import { useDraft } from '../../../form/drafts.ts';

/** What is ticked and added, kept until it is saved or thrown away. */
interface Ticked {
  /** `keyOf` each; null: nobody has ticked yet, so the usual size is proposed. */
  readonly ticks: readonly string[] | null;
  /** Sizes beside the usual ones. */
  readonly own: readonly SheetSize[];
}

const keyOf = ({ materialId, gauge, colourId }: SheetMetal, { widthMm, lengthMm }: SheetSize): string =>
  [materialId, gauge, colourId, widthMm, lengthMm].join(' ');

/** A grid of metals × sizes: which sizes are kept already, which are ticked to be added. */
export interface SheetTicks {
  readonly metals: readonly SheetMetal[];
  readonly sizes: readonly SheetSize[];
  readonly isKept: (metal: SheetMetal, size: SheetSize) => boolean;
  readonly isTicked: (metal: SheetMetal, size: SheetSize) => boolean;
  /** Tick or untick one metal in one size, or several at once. */
  readonly tick: (cells: readonly { metal: SheetMetal; size: SheetSize }[], on: boolean) => void;
  readonly addSize: (size: SheetSize) => void;
  /** The ticks as new rows. */
  readonly rows: readonly FormRow[];
  readonly drop: () => void;
}

/** Every gauge of every metal in every colour. */
export const metalsOf = ({ material, colour }: Pick<Shop, 'material' | 'colour'>): SheetMetal[] =>
  material.flatMap(({ id: materialId, gauges }) =>
    gauges.flatMap(({ label: gauge }) => colour.map(({ id: colourId }) => ({ materialId, gauge, colourId }))),
  );

/** As equal as a size is typed: to a tenth of a millimetre. */
const close = (a: number, b: number): boolean => Math.abs(a - b) < 0.1;
const sameSize = (a: SheetSize, b: SheetSize): boolean =>
  close(a.widthMm, b.widthMm) && close(a.lengthMm, b.lengthMm);

export function useSheetTicks(shop: Shop): SheetTicks {
  const { units } = shop.settings;
  const draft = useDraft<Ticked>('sheet grid', { ticks: null, own: [] });
  const metals = metalsOf(shop);
  const kept = shop.sheet.filter(({ form }) => form === 'sheet');
  // The shop's own sizes stand first, where they are seen.
  const sizes = [...draft.entries.own, ...kept, ...USUAL_SHEETS[units]].reduce<SheetSize[]>(
    (all, { widthMm, lengthMm }) =>
      all.some((size) => sameSize(size, { widthMm, lengthMm })) ? all : [...all, { widthMm, lengthMm }],
    [],
  );
  const isKept = (metal: SheetMetal, size: SheetSize): boolean =>
    kept.some(
      (sheet) =>
        sheet.materialId === metal.materialId &&
        sheet.gauge === metal.gauge &&
        sheet.colourId === metal.colourId &&
        sameSize(sheet, size),
    );
  const inNoSize = (metal: SheetMetal): boolean => !sizes.some((size) => isKept(metal, size));
  // Proposed until someone ticks: the usual size for what is kept in none.
  const proposed = () => metals.filter(inNoSize).map((metal) => keyOf(metal, usualSheet(units)));
  const ticked = new Set(draft.entries.ticks ?? proposed());
  const cells = metals.flatMap((metal) => sizes.map((size) => ({ metal, size })));
  const taken = shop.sheet.map(({ id }) => id);
  const rows = cells
    .filter(({ metal, size }) => ticked.has(keyOf(metal, size)) && !isKept(metal, size))
    .map(({ metal, size }): FormRow => {
      const row = newSheet(metal, size, units, taken);
      taken.push(row.id);
      return { kind: 'sheet', row };
    });
  return {
    metals,
    sizes,
    isKept,
    isTicked: (metal, size) => ticked.has(keyOf(metal, size)),
    tick(some, on) {
      const next = new Set(ticked);
      for (const { metal, size } of some) {
        if (on) next.add(keyOf(metal, size));
        else next.delete(keyOf(metal, size));
      }
      draft.set({ ticks: [...next] });
    },
    addSize: (size) => draft.set({ ticks: [...ticked], own: [...draft.entries.own, size] }),
    rows,
    drop: draft.drop,
  };
}
