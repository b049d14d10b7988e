import { Users } from 'lucide-react';
import { useState } from 'react';
import { operationIdOf } from '../../../core/shop/order.ts';
import type { Shop } from '../../../core/shop/state.ts';
import type { Instant } from '../../../core/units/brand.ts';
import { Dialog } from '../../ui/dialog.tsx';
import { WalkIn } from '../cutting/walk-in.tsx';
import { BigButton } from './big-button.tsx';

interface Props {
  shop: Shop;
  now: Instant;
  /** Puts an operation on the card; null while one is under way. */
  onTaken: ((operation: string) => void) | null;
}

/** A cut for someone at the counter, entered at the shear: it comes on the card at once, where nothing is under way. */
export function WalkInButton({ shop, now, onTaken }: Props) {
  const [isOpen, setOpen] = useState(false);
  const taken = (line: string) => {
    setOpen(false);
    onTaken?.(operationIdOf(line, 'shear'));
  };
  return (
    <>
      <BigButton icon={Users} onPress={() => setOpen(true)}>
        Walk-in cut
      </BigButton>
      <Dialog title="Walk-in cut" isOpen={isOpen} onClose={() => setOpen(false)} wide>
        <WalkIn shop={shop} now={now} onTaken={taken} />
      </Dialog>
    </>
  );
}
