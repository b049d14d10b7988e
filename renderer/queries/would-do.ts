import { useQuery } from '@tanstack/react-query';
import type { Command } from '../../core/edit/command.ts';
import { sentence } from '../../core/result.ts';
import { wouldDoWords } from '../../core/report/would-do.ts';
import { instant } from '../../core/units/brand.ts';
import { offThread } from '../compute/off-thread.ts';
import { useNow, useShop } from './hooks.ts';
import { keys } from './keys.ts';
import { numberOf } from './number-of.ts';

/** What a command would do to the plan as it stands, as a sentence; null without one, `waiting` while it is worked out. */
export function useWouldDo(
  command: Command | null,
): { readonly words: string; readonly waiting: boolean } | null {
  const { data: shop } = useShop();
  const now = instant(Math.floor(useNow() / 60) * 60);
  const { data, error } = useQuery({
    queryKey: [...keys.wouldDo, numberOf(shop), now, command],
    queryFn: () => offThread('wouldDo', shop!, command!, now),
    enabled: shop !== undefined && command !== null,
    structuralSharing: false,
    gcTime: 10_000,
    retry: false,
  });
  if (command === null) return null;
  if (error) return { words: error.message, waiting: false };
  if (!data) return { words: 'Working out what it would do to the plan …', waiting: true };
  return { words: data.ok ? wouldDoWords(data.value) : sentence(data.issues), waiting: false };
}
