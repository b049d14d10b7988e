import { CornerDownRight, Search, X } from 'lucide-react';
import { useRef } from 'react';
import { Input, SearchField, ToggleButton } from 'react-aria-components';
import { gaugeName } from '../../../core/shop/metal-name.ts';
import type { Bar, Lane } from '../../gantt/lanes.ts';
import { useBoardView } from '../../gantt/view.ts';
import { Select } from '../../ui/choice.tsx';
import { IconButton } from '../../ui/icon-button.tsx';
import { keyName, keysAreTaken } from '../../ui/key-name.ts';
import { KeyHint } from '../../ui/key-hint.tsx';
import { useKeyPresses } from '../../ui/use-key-presses.ts';
import {
  dueChoices,
  fitWords,
  nextThatFits,
  unfiltered,
  useBoardFilter,
  type DueChoice,
} from './board-filter.ts';
import type { Looks } from './use-looks.ts';
import styles from './board-tools.module.css';

const ALL = 'all';
const dueNames: Readonly<Record<DueChoice, string>> = {
  any: 'any day',
  today: 'due today',
  tomorrow: 'tomorrow',
  week: 'this week',
};

const distinct = (lanes: readonly Lane[], of: (bar: Bar) => string): string[] =>
  [...new Set(lanes.flatMap((lane) => lane.bars.map(of)))].sort();

interface Props {
  lanes: readonly Lane[];
  /** The bars that fit; null: no filter. */
  fit: readonly Bar[] | null;
  looks: Looks;
}

/** What narrows the board, how many lines fit, and how the board is drawn. */
export function BoardTools({ lanes, fit, looks }: Props) {
  const { filter, narrow } = useBoardFilter();
  return (
    <div className={styles.tools} role="search" aria-label="Find on the board">
      <FindField fit={fit} />
      <Choices lanes={lanes} />
      <ToggleButton
        className={styles.toggle ?? ''}
        isSelected={filter.late}
        onChange={(late) => narrow({ late })}
      >
        Late
      </ToggleButton>
      {fit && (
        <span className={styles.count} role="status" aria-label="Lines that fit">
          {fitWords(lanes, fit)}
          <IconButton
            small
            label="Next that fits"
            icon={CornerDownRight}
            isDisabled={fit.length === 0}
            onPress={() => goToNext(fit)}
          />
          <IconButton small label="Show all" icon={X} onPress={() => narrow(unfiltered)} />
        </span>
      )}
      <span className={styles.looks}>
        {looks.all.map(({ id, label, keys, on, why, flip }) => (
          <ToggleButton
            key={id}
            className={styles.toggle ?? ''}
            isSelected={on}
            isDisabled={why !== null}
            aria-label={why === null ? label : `${label}. ${why}`}
            onChange={flip}
          >
            {label} <KeyHint keys={keys} />
          </ToggleButton>
        ))}
      </span>
    </div>
  );
}

function goToNext(fit: readonly Bar[]): void {
  const { selected, select } = useBoardView.getState();
  const next = nextThatFits(fit, selected);
  if (next !== null) select(next);
}

/** "/" goes there; Enter goes to the next bar that fits, Escape empties it, then leaves it. */
function FindField({ fit }: { fit: readonly Bar[] | null }) {
  const input = useRef<HTMLInputElement>(null);
  const { filter, narrow } = useBoardFilter();
  useKeyPresses((event) => {
    if (keysAreTaken(event) || keyName(event) !== '/') return;
    event.preventDefault();
    input.current?.focus();
    input.current?.select();
  });
  return (
    <SearchField
      aria-label="Find on the board"
      className={styles.search ?? ''}
      value={filter.text}
      onChange={(text) => narrow({ text })}
      onSubmit={() => fit && goToNext(fit)}
      onKeyDown={({ key }) => key === 'Escape' && filter.text === '' && input.current?.blur()}
    >
      <Search size={16} aria-hidden />
      <Input ref={input} className={styles.input ?? ''} placeholder="line, customer, part, colour…" />
      <KeyHint keys="/" />
    </SearchField>
  );
}

function Choices({ lanes }: { lanes: readonly Lane[] }) {
  const { filter, narrow } = useBoardFilter();
  const colours = distinct(lanes, (bar) => bar.colourName);
  const gauges = distinct(lanes, (bar) => bar.gauge);
  const named = (id: string) => (id === ALL ? null : id);
  return (
    <div className={styles.choices}>
      <Select
        label="Colour"
        labelHidden
        options={[{ id: ALL, name: 'all colours' }, ...colours.map((name) => ({ id: name, name }))]}
        value={filter.colour ?? ALL}
        onChange={(id) => narrow({ colour: named(id) })}
      />
      <Select
        label="Gauge"
        labelHidden
        options={[{ id: ALL, name: 'all gauges' }, ...gauges.map((id) => ({ id, name: gaugeName(id) }))]}
        value={filter.gauge ?? ALL}
        onChange={(id) => narrow({ gauge: named(id) })}
      />
      <Select
        label="Due"
        labelHidden
        options={dueChoices.map((id) => ({ id, name: dueNames[id] }))}
        value={filter.due}
        onChange={(id) => narrow({ due: dueChoices.find((due) => due === id) ?? 'any' })}
      />
    </div>
  );
}
