import { PlansDialog } from './plans-dialog.tsx';
import { usePlansView } from './plans-view.ts';
import { PublishDialog } from './publish-dialog.tsx';

/** The dialog about plans that is asked for, over whatever screen is open. */
export function PlansDialogs() {
  const { asked, close } = usePlansView();
  if (asked === 'publish') return <PublishDialog onClose={close} />;
  if (asked === 'plans') return <PlansDialog onClose={close} />;
  return null;
}
