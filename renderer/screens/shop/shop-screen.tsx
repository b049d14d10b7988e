import type { Shop } from '../../../core/shop/state.ts';
import { useNow, useShop } from '../../queries/hooks.ts';
import { useMissing } from '../../queries/missing.ts';
import { navigate, usePlace } from '../../router.ts';
import { Button } from '../../ui/button.tsx';
import { Page } from '../../ui/page.tsx';
import { SentenceError, Waiting } from '../../ui/states.tsx';
import { Tabs } from '../../ui/tabs.tsx';
import { counted } from '../../../core/units/count.ts';
import { MissingList } from '../set-up/missing-list.tsx';
import { Calendars } from './calendars/calendars.tsx';
import { Machines } from './machines/machines.tsx';
import { TimesOffer } from './machines/times-offer.tsx';
import { Colours } from './materials/colours.tsx';
import { Materials } from './materials/materials.tsx';
import { Sheets } from './materials/sheets.tsx';
import { TrimOffers } from './materials/trim-offer.tsx';
import { Parts } from './parts/parts.tsx';
import styles from './shop.module.css';
import { Tools } from './tools/tools.tsx';

/** What the shop has and makes: everything a work order or a plan refers to. */
export function ShopScreen() {
  const { data: shop, error } = useShop();
  return (
    <Page
      title="Shop"
      lead="What you buy, what you make, what you make it on, and when you are open."
      actions={<Button onPress={() => navigate('shop', 'set-up')}>Set-up, step by step</Button>}
    >
      {error && <SentenceError message={error.message} />}
      {!shop && !error && <Waiting doing="Reading the shop" />}
      {shop && <Sections shop={shop} />}
    </Page>
  );
}

function Sections({ shop }: { shop: Shop }) {
  const now = useNow();
  const missing = useMissing(shop);
  const section = usePlace().path[1] ?? 'materials';
  const tabs = [
    { id: 'materials', label: 'Materials', count: shop.material.length, content: <Materials shop={shop} /> },
    { id: 'colours', label: 'Colours', count: shop.colour.length, content: <Colours shop={shop} /> },
    { id: 'sheets', label: 'Sheet sizes', count: shop.sheet.length, content: <Sheets shop={shop} /> },
    { id: 'parts', label: 'Parts', count: shop.part.length, content: <Parts shop={shop} /> },
    {
      id: 'machines',
      label: 'Machines',
      count: shop.machine.length,
      content: <Machines shop={shop} now={now} />,
    },
    { id: 'tools', label: 'Brake tools', count: shop.tool.length, content: <Tools shop={shop} /> },
    {
      id: 'calendars',
      label: 'Calendars',
      count: shop.calendar.length,
      content: <Calendars shop={shop} now={now} />,
    },
  ];
  const selected = tabs.some((tab) => tab.id === section) ? section : 'materials';
  return (
    <>
      {missing.length > 0 && (
        <details className={styles.missing}>
          <summary>{`${counted(missing.length, 'thing is', 'things are')} missing to plan`}</summary>
          <MissingList missing={missing} />
        </details>
      )}
      <TrimOffers shop={shop} />
      {selected === 'machines' && <TimesOffer shop={shop} />}
      <Tabs
        label="Parts of the shop"
        tabs={tabs}
        selected={selected}
        onSelect={(id) => navigate('shop', id)}
      />
    </>
  );
}
