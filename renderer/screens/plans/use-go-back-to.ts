import { sayRefused } from '../../form/say-refused.ts';
import { useSayDone } from '../../form/use-act.ts';
import { useGoBack } from '../../queries/plans.ts';
import { toast } from '../../ui/toast.tsx';

/** Makes a kept plan the one on the board and says so in the corner, with the way back. */
export function useGoBackTo(): (id: number, then?: () => void) => void {
  const { mutate } = useGoBack();
  const sayDone = useSayDone();
  return function goBackTo(id, then) {
    mutate(id, {
      onSuccess: ({ label, stepId, factId }) => {
        then?.();
        if (stepId === null) toast({ text: `${label}: the board shows that plan already.` });
        else sayDone(`${label}: done.`, { stepId, factId });
      },
      onError: (error) => sayRefused(error, { label: 'Do it again', act: () => goBackTo(id, then) }),
    });
  };
}
