import type { ReactNode } from 'react';
import { Tab, TabList, TabPanel, Tabs as Primitive } from 'react-aria-components';
import styles from './tabs.module.css';

interface TabEntry {
  id: string;
  label: string;
  /** A count after the label. */
  count?: number | undefined;
  content: ReactNode;
}

interface Props {
  label: string;
  tabs: readonly TabEntry[];
  /** Leave both out to let the tabs keep their own state. */
  selected?: string;
  onSelect?: (id: string) => void;
}

export function Tabs({ label, tabs, selected, onSelect }: Props) {
  const controlled = selected === undefined ? {} : { selectedKey: selected };
  return (
    <Primitive
      {...controlled}
      onSelectionChange={(key) => onSelect?.(String(key))}
      className={styles.tabs ?? ''}
    >
      <TabList aria-label={label} className={styles.list ?? ''}>
        {tabs.map((tab) => (
          <Tab key={tab.id} id={tab.id} className={styles.tab ?? ''}>
            {tab.label}
            {tab.count !== undefined && <span className={styles.count}>{tab.count}</span>}
          </Tab>
        ))}
      </TabList>
      {tabs.map((tab) => (
        <TabPanel key={tab.id} id={tab.id} className={styles.panel ?? ''}>
          {tab.content}
        </TabPanel>
      ))}
    </Primitive>
  );
}
