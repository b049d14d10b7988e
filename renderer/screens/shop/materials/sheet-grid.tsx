import { Plus } from 'lucide-react';
import { useState } from 'react';
import { sizeName, type SheetSize } from '../../../../core/material/usual-sheets.ts';
import { metalName } from '../../../../core/shop/metal-name.ts';
import type { Shop } from '../../../../core/shop/state.ts';
import { counted } from '../../../../core/units/count.ts';
import { Length } from '../../../form/parsed-field.tsx';
import { useAct } from '../../../form/use-act.ts';
import { Button } from '../../../ui/button.tsx';
import { CheckBox } from '../../../ui/check-box.tsx';
import { Swatch } from '../../../ui/choice.tsx';
import { toastError } from '../../../ui/toast.tsx';
import formStyles from '../../../form/form.module.css';
import styles from './sheet-grid.module.css';
import { useSheetTicks, type SheetTicks } from './sheet-ticks.ts';

/** Metals down, sizes across: a tick where that size of that metal is bought. */
export function SheetGrid({ shop, ticks }: { shop: Shop; ticks: SheetTicks }) {
  const { metals, sizes, isKept, isTicked, tick } = ticks;
  const free = (size: SheetSize) =>
    metals.filter((metal) => !isKept(metal, size)).map((metal) => ({ metal, size }));
  const hexOf = (colourId: string) => shop.colour.find(({ id }) => id === colourId)?.hex ?? '#808080';
  return (
    <>
      <div className={styles.scroll}>
        <table className={styles.grid} aria-label="Metals and sizes">
          <thead>
            <tr>
              <th scope="col">Metal</th>
              {sizes.map((size) => {
                const cells = free(size);
                const all = cells.length === 0 || cells.every((cell) => isTicked(cell.metal, size));
                return (
                  <th key={sizeName(size, shop.settings)} scope="col">
                    <CheckBox
                      label={sizeName(size, shop.settings)}
                      aria-label={`All in ${sizeName(size, shop.settings)}`}
                      isSelected={all}
                      isIndeterminate={!all && cells.some((cell) => isTicked(cell.metal, size))}
                      isDisabled={cells.length === 0}
                      onChange={(on) => tick(cells, on)}
                    />
                  </th>
                );
              })}
            </tr>
          </thead>
          <tbody>
            {metals.map((metal) => {
              const name = metalName(shop, metal);
              return (
                <tr key={`${metal.materialId} ${metal.gauge} ${metal.colourId}`}>
                  <th scope="row">
                    <Swatch hex={hexOf(metal.colourId)} /> {name}
                  </th>
                  {sizes.map((size) => (
                    <td key={sizeName(size, shop.settings)}>
                      <CheckBox
                        label=""
                        aria-label={`${name}, ${sizeName(size, shop.settings)}`}
                        isSelected={isKept(metal, size) || isTicked(metal, size)}
                        isDisabled={isKept(metal, size)}
                        onChange={(on) => tick([{ metal, size }], on)}
                      />
                    </td>
                  ))}
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
      <OwnSize shop={shop} ticks={ticks} />
    </>
  );
}

/** A size that is not among the usual ones becomes a column. */
function OwnSize({ shop, ticks }: { shop: Shop; ticks: SheetTicks }) {
  const [size, setSize] = useState<SheetSize>({ widthMm: NaN, lengthMm: NaN });
  const { units } = shop.settings;
  const ready = size.widthMm > 0 && size.lengthMm > 0;
  const add = () => {
    ticks.addSize(size);
    setSize({ widthMm: NaN, lengthMm: NaN });
  };
  return (
    <div className={formStyles.line} role="group" aria-label="Another size">
      <Length
        label="Width"
        units={units}
        value={size.widthMm}
        onChange={(widthMm) => setSize({ ...size, widthMm })}
      />
      <Length
        label="Length"
        units={units}
        value={size.lengthMm}
        onChange={(lengthMm) => setSize({ ...size, lengthMm })}
      />
      <div className={formStyles.end}>
        <Button icon={Plus} isDisabled={!ready} onPress={add}>
          Add this size
        </Button>
      </div>
    </div>
  );
}

/** The grid beside the list of sheet sizes: ticks become rows in one step. */
export function ManySheets({ shop, onSaved }: { shop: Shop; onSaved: (id: string) => void }) {
  const ticks = useSheetTicks(shop);
  const act = useAct();
  const { rows } = ticks;
  const label = `Add ${counted(rows.length, 'sheet size')}`;
  const save = async () => {
    await act({ do: 'rows.save', rows, label });
    ticks.drop();
    onSaved(rows[0]!.row.id);
  };
  return (
    <section className={formStyles.frame} aria-label="Several sheet sizes at once">
      <header className={formStyles.frameHead}>
        <h2>Several sheet sizes at once</h2>
      </header>
      <div className={formStyles.frameBody}>
        <p className={formStyles.note}>
          Tick the sizes that you buy of each metal. Those in grey are kept already. Prices and what lies
          there are put in afterwards.
        </p>
        {ticks.metals.length === 0 ? (
          <p>Add a material and a colour first.</p>
        ) : (
          <SheetGrid shop={shop} ticks={ticks} />
        )}
      </div>
      <footer className={formStyles.frameFoot}>
        <Button look="primary" isDisabled={rows.length === 0} onPress={() => void save().catch(toastError)}>
          {label}
        </Button>
        <Button onPress={ticks.drop}>Back to what is proposed</Button>
      </footer>
    </section>
  );
}
