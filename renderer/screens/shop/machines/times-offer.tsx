import { useState } from 'react';
import { timesOffer } from '../../../../core/report/times-offer.ts';
import type { Shop } from '../../../../core/shop/state.ts';
import { WouldDoDialog } from '../../../shell/would-do-dialog.tsx';
import { Button } from '../../../ui/button.tsx';
import look from '../shop.module.css';
import table from './machines.module.css';

/** Where machines follow an older edition of the usual times: what the new one says, and what it would do before it is taken. */
export function TimesOffer({ shop }: { shop: Shop }) {
  const [isOpen, setOpen] = useState(false);
  const offer = timesOffer(shop);
  if (offer === null) return null;
  const { changes, command } = offer;
  return (
    <div className={look.offer} role="status">
      <p>
        Usual times have changed. Your machines keep the figures that they have until you take the new ones.
      </p>
      <div className={look.offerTools}>
        <Button small onPress={() => setOpen(true)}>
          Look at the new usual times
        </Button>
      </div>
      {isOpen && (
        <WouldDoDialog
          wide
          title="Usual times have changed"
          act="Take the new times"
          command={command}
          onClose={() => setOpen(false)}
        >
          <p>Figures that you set yourself stay as they are.</p>
          <table className={table.standards} aria-label="What changes">
            <thead>
              <tr>
                <th scope="col">Element of work</th>
                <th scope="col">Machines</th>
                <th scope="col">Now</th>
                <th scope="col">New</th>
                <th scope="col">Source</th>
              </tr>
            </thead>
            <tbody>
              {changes.map(({ machines, figure, is, becomes, basis }) => (
                <tr key={`${figure} ${machines.join()}`}>
                  <th scope="row">{figure}</th>
                  <td>{machines.join(', ')}</td>
                  <td>{is}</td>
                  <td>{becomes}</td>
                  <td>{basis}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </WouldDoDialog>
      )}
    </div>
  );
}
