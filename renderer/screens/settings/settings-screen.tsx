import { settings as settingsSchema, type Settings } from '../../../core/shop/settings.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { useShop, useStatus } from '../../queries/hooks.ts';
import { Page } from '../../ui/page.tsx';
import { SentenceError, Waiting } from '../../ui/states.tsx';
import { Tabs } from '../../ui/tabs.tsx';
import { FormFrame } from '../../form/form-frame.tsx';
import { useForm } from '../../form/use-form.ts';
import { BackupsPanel } from './backups/backups-panel.tsx';
import { BlankFields } from './blank-fields.tsx';
import { FileMemory } from './file-memory.tsx';
import { FloorFields } from './floor-fields.tsx';
import { History } from './history.tsx';
import { IdleCutting } from './idle-cutting.tsx';
import { Look } from './look.tsx';
import { MetalFields } from './metal-fields.tsx';
import { PartRuleFields } from './part-rule-fields.tsx';
import { PlanningFields } from './planning-fields.tsx';
import { RemnantFields } from './remnant-fields.tsx';
import { StockKnowsFields } from './stock-knows-fields.tsx';
import styles from './settings.module.css';
import { ShopFields } from './shop-fields.tsx';
import { WeightFields } from './weight-fields.tsx';

/** How the shop counts and what matters most, this window's own theme, what this machine does by itself, and what was done; backups of it all. */
export function SettingsScreen() {
  const { data: shop, error } = useShop();
  return (
    <Page title="Settings">
      {error && <SentenceError message={error.message} />}
      {!shop && !error && <Waiting doing="Reading the settings" />}
      {shop && (
        <Tabs
          label="Settings"
          tabs={[
            { id: 'shop', label: 'The shop', content: <ShopSettings shop={shop} /> },
            { id: 'files', label: 'Names in files', content: <FileMemory shop={shop} /> },
            { id: 'backups', label: 'Backups and export', content: <BackupsPanel shop={shop} /> },
          ]}
        />
      )}
    </Page>
  );
}

function ShopSettings({ shop }: { shop: Shop }) {
  const status = useStatus().data;
  return (
    <div className={styles.columns}>
      <SettingsForm shop={shop} />
      <div className={styles.side}>
        <Look />
        <IdleCutting />
        {status && (
          <section className={styles.panel}>
            <h2>Data file</h2>
            <p className={styles.path}>{status.dataFile}</p>
            <p
              className={styles.note}
            >{`Everything the shop keeps is in this one file. Foldweek ${status.version}.`}</p>
          </section>
        )}
        <History timeZone={shop.settings.timeZone} />
      </div>
    </div>
  );
}

function SettingsForm({ shop }: { shop: Shop }) {
  const form = useForm<Settings>({
    name: 'settings',
    shop,
    current: shop.settings,
    schema: settingsSchema,
    command: (row) => ({ do: 'settings.save', row }),
    fieldOf: ({ field }) => (field === 'time zone' ? 'timeZone' : ''),
  });
  return (
    <FormFrame title="The shop" form={form} onSaved={() => undefined}>
      <ShopFields form={form} />
      <WeightFields form={form} />
      <PlanningFields form={form} />
      <BlankFields form={form} />
      <RemnantFields form={form} />
      <StockKnowsFields form={form} />
      <MetalFields form={form} />
      <FloorFields form={form} />
      <PartRuleFields form={form} />
    </FormFrame>
  );
}
