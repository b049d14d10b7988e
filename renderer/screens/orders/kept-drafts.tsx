import { useDrafts } from '../../form/drafts.ts';
import { navigate } from '../../router.ts';
import { Button } from '../../ui/button.tsx';
import { Tag } from '../../ui/tag.tsx';
import { toast } from '../../ui/toast.tsx';
import styles from './kept-drafts.module.css';
import { NEW_ORDER, orderDraft } from './order-draft.ts';
import type { OrderEntries } from './order-entries.ts';

/** Work orders that were typed and not saved, also before the window was closed: to go on with, or to throw away. */
export function KeptDrafts() {
  const { entries, keep, drop } = useDrafts();
  const kept = Object.entries(entries).flatMap(([form, typed]) => {
    const address = orderDraft.addressOf(form);
    return address === null ? [] : [{ form, address, typed: typed as OrderEntries }];
  });
  if (kept.length === 0) return null;
  const discard = (form: string, name: string, typed: OrderEntries) => {
    drop(form);
    toast({
      text: `What was typed of ${name} is thrown away.`,
      action: { label: 'Bring it back', act: () => keep(form, typed) },
    });
  };
  return (
    <ul className={styles.drafts} aria-label="Not saved yet">
      {kept.map(({ form, address, typed }) => {
        const { customer } = typed.order;
        const name = address === NEW_ORDER ? 'a new work order' : `work order ${address}`;
        return (
          <li key={form}>
            <Tag look="warn">not saved</Tag>
            <span>{`${name[0]?.toUpperCase()}${name.slice(1)}${customer && `, ${customer}`}`}</span>
            <Button small aria-label={`Go on with ${name}`} onPress={() => navigate('orders', address)}>
              Go on
            </Button>
            <Button
              small
              look="quiet"
              aria-label={`Discard ${name}`}
              onPress={() => discard(form, name, typed)}
            >
              Discard
            </Button>
          </li>
        );
      })}
    </ul>
  );
}
