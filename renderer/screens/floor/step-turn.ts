import { kept } from './kept.ts';
import { useFloorKeys } from './use-floor-keys.ts';

/** Which step someone turned to, of what: "1042/1:brake 3". One work at a time, so a restart finds it again. */
const turned = kept('foldweek.floor.step');

/**
 * The step that is shown of a list, from 0, and how to turn to another. Until someone turns, it is where work goes on.
 * @param of names the list; another list starts where its own work goes on
 */
export function useStepTurn(of: string, count: number, open: number) {
  const text = turned.use() ?? '';
  const own = text.startsWith(`${of} `) ? Number(text.slice(of.length + 1)) : NaN;
  const shown = Number.isInteger(own) && own >= 0 && own < count ? own : open;
  const turn = (to: number) => {
    if (to >= 0 && to < count) turned.write(to === open ? null : `${of} ${to}`);
  };
  useFloorKeys({ '←': () => turn(shown - 1), '→': () => turn(shown + 1) });
  return { shown, turn };
}
