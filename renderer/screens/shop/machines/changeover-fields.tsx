import { Plus, X } from 'lucide-react';
import { byTools, defaultChangeover, TOOL_CHANGEOVER } from '../../../../core/estimate/changeover.ts';
import type { Attribute, Machine } from '../../../../core/shop/machine.ts';
import { formatDuration } from '../../../../core/units/duration.ts';
import { Button } from '../../../ui/button.tsx';
import { Select } from '../../../ui/choice.tsx';
import { IconButton } from '../../../ui/icon-button.tsx';
import styles from '../../../form/form.module.css';
import { Fields, Group } from '../../../form/form-frame.tsx';
import { without, withEntry } from '../../../form/list.ts';
import { Duration } from '../../../form/parsed-field.tsx';
import { hasTools } from '../../../../core/limits/tool-limits.ts';
import type { Shop } from '../../../../core/shop/state.ts';
import type { MachineFields } from './limit-fields.tsx';
import { attributesAt, valuesOf, withChangeover } from './machine-edit.ts';
import { attributeName } from './state-fields.tsx';

/** How long the machine takes to change from one kind of work to another. */
export function ChangeoverFields({ shop, form }: MachineFields) {
  const { entries, errors, set } = form;
  const { combine, attributes } = entries.changeover;
  const usual = { ...TOOL_CHANGEOVER, ...defaultChangeover(entries.stage).attributes };
  const offered = hasTools(entries, shop.tool) && attributes.tools === undefined;
  return (
    <Group
      title="Changeover"
      note="Time lost between two operations that differ. An empty field costs nothing. Usual figures are common practice, no source: your own beat them."
    >
      {offered && (
        <p className={styles.note}>
          The tools of this brake are on record, but a change of them costs nothing yet.{' '}
          <Button small onPress={() => set({ changeover: byTools(entries.changeover) })}>
            {`Count tools instead of gauge: ${formatDuration(TOOL_CHANGEOVER.tools)}, hemming tools ${formatDuration(TOOL_CHANGEOVER.hemming)}`}
          </Button>
        </p>
      )}
      <Fields>
        {attributesAt(shop, entries).map((name) => (
          <Duration
            key={name}
            label={`Another ${attributeName[name].toLowerCase()}`}
            value={attributes[name] ?? NaN}
            onChange={(seconds, empty) =>
              set({ changeover: withChangeover(entries, name, empty ? null : seconds) })
            }
            help={usual[name] === undefined ? 'usually nothing' : `usually ${formatDuration(usual[name])}`}
            error={errors[`changeover.attributes.${name}`]}
          />
        ))}
        <Select
          label="When several differ"
          options={[
            { id: 'sum', name: 'one after the other: they add up' },
            { id: 'max', name: 'side by side: the longest counts' },
          ]}
          value={combine}
          onChange={(id) => set({ changeover: { ...entries.changeover, combine: id as 'sum' | 'max' } })}
        />
      </Fields>
      <Exceptions {...{ shop, form }} />
    </Group>
  );
}

type Exception = Machine['changeover']['exceptions'][number];

function Exceptions({ shop, form }: MachineFields) {
  const { entries, errors, set } = form;
  const { exceptions } = entries.changeover;
  const change = (next: readonly Exception[]) =>
    set({ changeover: { ...entries.changeover, exceptions: next } });
  const names = attributesAt(shop, entries);
  const fresh = (name: Attribute): Exception => {
    const values = valuesOf(shop, name);
    return { attribute: name, from: values[0]?.id ?? '', to: values[1]?.id ?? '', seconds: NaN };
  };
  return (
    <Group
      title="Exceptions"
      note="Named pairs that take a time of their own, in this direction."
      end={
        <Button small icon={Plus} onPress={() => change([...exceptions, fresh(names.at(-1) ?? 'gauge')])}>
          Add exception
        </Button>
      }
    >
      {exceptions.map((exception, i) => (
        <ExceptionLine
          key={i}
          name={`exception ${i + 1}`}
          shop={shop}
          names={names}
          exception={exception}
          error={errors[`changeover.exceptions.${i}.seconds`]}
          onAttribute={(name) => change(withEntry(exceptions, i, fresh(name)))}
          onChange={(patch) => change(withEntry(exceptions, i, patch))}
          onRemove={() => change(without(exceptions, i))}
        />
      ))}
    </Group>
  );
}

interface LineProps {
  name: string;
  shop: Shop;
  names: readonly Attribute[];
  exception: Exception;
  error: string | undefined;
  onAttribute: (name: Attribute) => void;
  onChange: (patch: Partial<Exception>) => void;
  onRemove: () => void;
}

function ExceptionLine({ name, shop, names, exception, error, onAttribute, onChange, onRemove }: LineProps) {
  const values = valuesOf(shop, exception.attribute);
  return (
    <div className={styles.line} role="group" aria-label={name}>
      <Select
        label="What"
        options={names.map((id) => ({ id, name: attributeName[id].toLowerCase() }))}
        value={exception.attribute}
        onChange={(id) => onAttribute(id as Attribute)}
      />
      <Select label="From" options={values} value={exception.from} onChange={(from) => onChange({ from })} />
      <Select label="To" options={values} value={exception.to} onChange={(to) => onChange({ to })} />
      <Duration
        label="Time"
        value={exception.seconds}
        onChange={(seconds) => onChange({ seconds })}
        error={error}
      />
      <div className={styles.end}>
        <IconButton label={`Remove ${name}`} icon={X} small onPress={onRemove} />
      </div>
    </div>
  );
}
