import { Search } from 'lucide-react';
import { Input, SearchField, ToggleButton } from 'react-aria-components';
import { gaugeName } from '../../../core/shop/metal-name.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { Select } from '../../ui/choice.tsx';
import { facets, type Facet } from './line-filter.ts';
import { useOrdersView } from './orders-view.ts';
import styles from './orders.module.css';

const ALL = 'all';
const names: Readonly<Record<Facet, string>> = {
  late: 'Late',
  rush: 'Rush',
  unplannable: 'Cannot be planned',
  notQueued: 'Not queued yet',
  thisWeek: 'Due this week',
  closed: 'Done and cancelled too',
};

/** Text, facets, colour and gauge: what narrows the table. */
export function FilterBar({ shop, counts }: { shop: Shop; counts: Record<Facet, number> }) {
  const { filter, narrow } = useOrdersView();
  const gauges = [...new Set(shop.material.flatMap((m) => m.gauges.map((g) => g.label)))];
  const flip = (facet: Facet, on: boolean) =>
    narrow({ on: on ? [...filter.on, facet] : filter.on.filter((one) => one !== facet) });
  return (
    <div className={styles.filters} role="search">
      <SearchField
        aria-label="Find lines"
        className={styles.search ?? ''}
        value={filter.text}
        onChange={(text) => narrow({ text })}
      >
        <Search size={16} aria-hidden />
        <Input className={styles.searchInput ?? ''} placeholder="order, customer, part, colour…" />
      </SearchField>
      {facets.map((facet) => (
        <ToggleButton
          key={facet}
          className={styles.facet ?? ''}
          isSelected={filter.on.includes(facet)}
          onChange={(on) => flip(facet, on)}
        >
          {names[facet]} <span className={styles.count}>{counts[facet]}</span>
        </ToggleButton>
      ))}
      <div className={styles.narrow}>
        <Select
          label="Colour"
          options={[
            { id: ALL, name: 'all colours' },
            ...shop.colour.map(({ id, name, hex }) => ({ id, name, swatch: hex })),
          ]}
          value={filter.colourId ?? ALL}
          onChange={(id) => narrow({ colourId: id === ALL ? null : id })}
        />
        <Select
          label="Gauge"
          options={[{ id: ALL, name: 'all gauges' }, ...gauges.map((id) => ({ id, name: gaugeName(id) }))]}
          value={filter.gauge ?? ALL}
          onChange={(id) => narrow({ gauge: id === ALL ? null : id })}
        />
      </div>
    </div>
  );
}
