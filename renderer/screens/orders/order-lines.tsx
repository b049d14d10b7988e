import { Plus, X } from 'lucide-react';
import type { ReactNode } from 'react';
import { gaugeName } from '../../../core/shop/metal-name.ts';
import { safeDateWords } from '../../../core/report/safe-date-words.ts';
import type { Shop } from '../../../core/shop/state.ts';
import type { WorkOrder } from '../../../core/shop/order.ts';
import { instant, type Instant } from '../../../core/units/brand.ts';
import { Button } from '../../ui/button.tsx';
import { Combo, Select } from '../../ui/choice.tsx';
import { ConfidenceChoice, useConfidence } from '../../ui/confidence-choice.tsx';
import { IconButton } from '../../ui/icon-button.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { Group } from '../../form/form-frame.tsx';
import { without } from '../../form/list.ts';
import { Length } from '../../form/parsed-field.tsx';
import type { Form } from '../../form/use-form.ts';
import { LineMore } from './line-more.tsx';
import { freshLine, withMaterial, withPart, type LineEntry, type OrderEntries } from './order-entries.ts';
import { PromiseLine } from './promise-line.tsx';
import { usePromises } from './use-promises.ts';
import styles from './orders.module.css';

/** The lines of the order on the form. */
export function OrderLines({ shop, form }: { shop: Shop; form: Form<OrderEntries> }) {
  const { order, lines } = form.entries;
  const set = (next: LineEntry[]) => form.set({ lines: next });
  const promises = usePromises(shop, form.entries);
  const promised = (number: number) => promises.lines.get(`${order.id}/${number}`);
  const confidence = useConfidence();
  const withConfidence = (lineId: string) =>
    promises.chances?.[lineId]
      ? safeDateWords(promises.chances, lineId, confidence, shop.settings.timeZone)
      : null;
  /** A date that is accepted is the line's where it has one of its own, else the order's. */
  const promise = (at: number, due: Instant) =>
    lines[at]!.due === null
      ? form.set({ order: { ...order, due } })
      : set(lines.map((line, i) => (i === at ? { ...line, due } : line)));
  return (
    <Group
      title="Lines"
      end={
        <Button small icon={Plus} onPress={() => set([...lines, freshLine(shop, order.id, lines)])}>
          Add line
        </Button>
      }
    >
      {form.errors.lines && <p className={styles.warning}>{form.errors.lines}</p>}
      {promises.trouble && <p className={styles.warning}>{promises.trouble}</p>}
      {promises.chances && (
        <div className={styles.confidence}>
          <ConfidenceChoice label="How sure a date is to be" />
        </div>
      )}
      {lines.map((line, i) => (
        <LineFields
          key={i}
          promise={
            promised(line.number) && (
              <PromiseLine
                answer={promised(line.number)!}
                due={line.due ?? order.due}
                timeZone={shop.settings.timeZone}
                withConfidence={withConfidence(`${order.id}/${line.number}`)}
                old={promises.old}
                onPromise={(due) => promise(i, instant(due))}
              />
            )
          }
          shop={shop}
          name={`${order.id}/${line.number}`}
          line={line}
          order={order}
          error={(field) => form.errors[`lines.${i}.${field}`]}
          onChange={(next) => set(lines.map((old, at) => (at === i ? next : old)))}
          onRemove={() => set(without(lines, i))}
        />
      ))}
    </Group>
  );
}

interface LineProps {
  shop: Shop;
  name: string;
  line: LineEntry;
  order: WorkOrder;
  error: (field: keyof LineEntry) => string | undefined;
  onChange: (line: LineEntry) => void;
  onRemove: () => void;
  /** What can be promised for it; missing: nothing yet. */
  promise: ReactNode;
}

function LineFields({ shop, name, line, order, error, onChange, onRemove, promise }: LineProps) {
  const set = (patch: Partial<LineEntry>) => onChange({ ...line, ...patch });
  return (
    <div className={styles.lineFields} role="group" aria-label={`Line ${name}`}>
      <strong className={styles.lineName}>{name}</strong>
      <Combo
        label="Part"
        options={shop.part}
        value={line.partId || null}
        onChange={(partId) => onChange(withPart(shop, line, partId))}
        error={error('partId') && 'Choose a part.'}
      />
      <StockFields {...{ shop, line, error, onChange }} />
      <Length
        label="Length"
        units={shop.settings.units}
        value={line.lengthMm}
        onChange={(lengthMm) => set({ lengthMm })}
        error={error('lengthMm')}
      />
      <NumberField
        label="Pieces"
        whole
        value={line.quantity}
        onChange={(quantity) => set({ quantity })}
        error={error('quantity')}
      />
      <NumberField
        label="Extra pieces accepted"
        whole
        value={line.overrun}
        onChange={(overrun) => set({ overrun })}
        error={error('overrun')}
      />
      <Select
        label="Status"
        options={[
          { id: 'open', name: 'open' },
          { id: 'done', name: 'done' },
          { id: 'cancelled', name: 'cancelled' },
        ]}
        value={line.status}
        onChange={(status) => set({ status: status as LineEntry['status'] })}
      />
      <span className={styles.lineEnd}>
        <IconButton label={`Remove line ${name}`} icon={X} small onPress={onRemove} />
      </span>
      <LineMore
        {...{ line, order, error, set }}
        timeZone={shop.settings.timeZone}
        knows={shop.settings.stockKnows}
      />
      {promise}
    </div>
  );
}

const StockFields = ({
  shop,
  line,
  error,
  onChange,
}: Omit<LineProps, 'name' | 'order' | 'onRemove' | 'promise'>) => (
  <>
    {shop.material.length > 1 && (
      <Select
        label="Material"
        options={shop.material}
        value={line.materialId}
        onChange={(materialId) => onChange(withMaterial(shop, line, materialId))}
        error={error('materialId')}
      />
    )}
    <Select
      label="Gauge"
      options={(shop.material.find((m) => m.id === line.materialId)?.gauges ?? []).map(({ label }) => ({
        id: label,
        name: gaugeName(label),
      }))}
      value={line.gauge}
      onChange={(gauge) => onChange({ ...line, gauge })}
      error={error('gauge')}
    />
    <Select
      label="Colour"
      options={shop.colour.map(({ id, name, hex }) => ({ id, name, swatch: hex }))}
      value={line.colourId}
      onChange={(colourId) => onChange({ ...line, colourId })}
      error={error('colourId')}
    />
  </>
);
