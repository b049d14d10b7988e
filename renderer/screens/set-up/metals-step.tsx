import { metal as metals, type Gauge, type Metal } from '../../../core/material/material.ts';
import { USUAL_COLOURS, newColour } from '../../../core/material/usual-colours.ts';
import { usualGauges, usualMaterial } from '../../../core/material/usual-metals.ts';
import type { FormRow } from '../../../core/edit/command.ts';
import { gaugeName } from '../../../core/shop/metal-name.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { counted } from '../../../core/units/count.ts';
import { formatThickness } from '../../../core/units/length.ts';
import { useDraft } from '../../form/drafts.ts';
import { Group } from '../../form/form-frame.tsx';
import { RowsFromFile } from '../../form/pasted-rows.tsx';
import { useAct } from '../../form/use-act.ts';
import { placeOf } from '../../router.ts';
import { CheckBox } from '../../ui/check-box.tsx';
import { Swatch } from '../../ui/choice.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { toastError } from '../../ui/toast.tsx';
import { metalName } from '../shop/materials/materials.tsx';
import styles from './set-up.module.css';
import { StepFoot } from './step-foot.tsx';
import { useGoOn } from './steps.ts';

/** What is ticked and typed, kept until it is saved. */
interface Ticked {
  /** "galvanized 24" */
  readonly gauges: readonly string[];
  /** By name. */
  readonly colours: readonly string[];
  /** More colours, separated by commas. */
  readonly more: string;
}
const NOTHING: Ticked = { gauges: [], colours: [], more: '' };

const gaugeKey = (metal: Metal, { label }: Gauge): string => `${metal} ${label}`;
const flipped = (list: readonly string[], one: string, on: boolean): string[] =>
  on ? [...list, one] : list.filter((other) => other !== one);
const same = (a: string, b: string): boolean => a.toLowerCase() === b.toLowerCase();

/** The new rows that the ticks ask for: a metal with its gauges, or more gauges of one that is kept; colours. */
export function rowsOf(shop: Shop, ticked: Ticked): FormRow[] {
  const ofMetals = metals.options.flatMap((metal): FormRow[] => {
    const gauges = usualGauges(metal, shop.settings.units).filter((gauge) =>
      ticked.gauges.includes(gaugeKey(metal, gauge)),
    );
    const kept = shop.material.find((material) => material.metal === metal);
    const fresh = gauges.filter(({ label }) => !kept?.gauges.some((gauge) => gauge.label === label));
    if (fresh.length === 0) return [];
    const row = kept ? { ...kept, gauges: [...kept.gauges, ...fresh] } : usualMaterial(metal, fresh);
    return [{ kind: 'material', row }];
  });
  const taken = shop.colour.map(({ id }) => id);
  const names = [...ticked.colours, ...ticked.more.split(/[,;\n]/).map((name) => name.trim())];
  const fresh = names.filter(
    (name, i) =>
      name !== '' &&
      names.findIndex((other) => same(other, name)) === i &&
      !shop.colour.some((colour) => same(colour.name, name)),
  );
  const colours = fresh.map((name): FormRow => {
    const row = newColour(name, taken);
    taken.push(row.id);
    return { kind: 'colour', row };
  });
  return [...ofMetals, ...colours];
}

/** Metals and gauges as they are usually bought, and colours, chosen by ticking. */
export function MetalsStep({ shop }: { shop: Shop }) {
  const goOn = useGoOn(shop);
  const act = useAct();
  const draft = useDraft('set-up metals', NOTHING);
  const rows = rowsOf(shop, draft.entries);
  const colours = rows.filter(({ kind }) => kind === 'colour').length;
  const gauges = draft.entries.gauges.length;
  const does = [
    gauges > 0 &&
      (shop.settings.units === 'in' ? counted(gauges, 'gauge') : counted(gauges, 'thickness', 'thicknesses')),
    colours > 0 && counted(colours, 'colour'),
  ].filter(Boolean);
  const keep = async () => {
    if (rows.length > 0) await act({ do: 'rows.save', rows, label: 'Add metals and colours' });
    draft.drop();
    goOn('metals');
  };
  return (
    <>
      <div className={styles.body}>
        <p>
          Tick what you buy. Strength, thickness and weight are the published ones until you put in your
          supplier’s.
        </p>
        {metals.options.map((metal) => (
          <Gauges
            key={metal}
            shop={shop}
            metal={metal}
            ticked={draft.entries.gauges}
            onTick={(next) => draft.set({ gauges: next })}
          />
        ))}
        <Colours shop={shop} ticked={draft.entries} onTick={draft.set} />
        <p className={styles.offers}>
          <RowsFromFile list="materials" label="Metals from a file" />
          <RowsFromFile list="colours" label="Colours from a file" />
          <a href={placeOf('shop', 'materials')}>Another metal or thickness, strength and test pieces</a>
        </p>
      </div>
      <StepFoot
        step="metals"
        does={rows.length > 0 ? `Keep ${does.join(' and ')}` : null}
        onGoOn={() => void keep().catch(toastError)}
        onSkip={rows.length > 0 ? () => goOn('metals') : undefined}
      />
    </>
  );
}

interface GaugesProps {
  shop: Shop;
  metal: Metal;
  ticked: readonly string[];
  onTick: (gauges: string[]) => void;
}

function Gauges({ shop, metal, ticked, onTick }: GaugesProps) {
  const { settings } = shop;
  const kept = shop.material.find((material) => material.metal === metal)?.gauges ?? [];
  const nameOf = (gauge: Gauge) => {
    const thickness = formatThickness(gauge.thicknessMm, settings);
    return settings.units === 'mm' ? thickness : `${gaugeName(gauge.label)} (${thickness})`;
  };
  return (
    <Group title={metalName[metal]}>
      <div className={styles.ticks}>
        {usualGauges(metal, settings.units).map((gauge) => {
          const key = gaugeKey(metal, gauge);
          const isKept = kept.some(({ label }) => label === gauge.label);
          return (
            <CheckBox
              key={key}
              label={nameOf(gauge)}
              isSelected={isKept || ticked.includes(key)}
              isDisabled={isKept}
              onChange={(on) => onTick(flipped(ticked, key, on))}
            />
          );
        })}
      </div>
    </Group>
  );
}

function Colours({
  shop,
  ticked,
  onTick,
}: {
  shop: Shop;
  ticked: Ticked;
  onTick: (patch: Partial<Ticked>) => void;
}) {
  return (
    <Group
      title="Colours"
      note="How a screen paints them is rough; put in the supplier’s later. Bare metal counts as a colour."
    >
      <div className={styles.ticks}>
        {USUAL_COLOURS.map(([name, hex]) => {
          const isKept = shop.colour.some((colour) => same(colour.name, name));
          return (
            <span key={name} className={styles.colour}>
              <CheckBox
                label={name}
                isSelected={isKept || ticked.colours.includes(name)}
                isDisabled={isKept}
                onChange={(on) => onTick({ colours: flipped(ticked.colours, name, on) })}
              />
              <Swatch hex={hex} />
            </span>
          );
        })}
      </div>
      <TextField
        label="More colours"
        value={ticked.more}
        onChange={(more) => onTick({ more })}
        placeholder="names with commas between"
        maxLength={2000}
      />
    </Group>
  );
}
