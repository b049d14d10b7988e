import type { WorkPrices } from '../cutting/work.ts';
import { standard, type Timed } from '../estimate/standards.ts';
import { defaultWeights } from '../shop/settings.ts';
import type { Shop } from '../shop/state.ts';

/**
 * Seconds that no standard of the shear holds: read a setting, set it and measure its first piece; mark a piece and lay it to
 * its line; turn a long piece a quarter. Common practice, no source.
 */
const SETTING_CHECK_S = 60;
const LAY_TO_LINE_S = 30;
const TURN_S = 12;

/**
 * What a second of a machine's work weighs against stock, in cents: the shop's weights say what an hour of changeover and what
 * a hundred of stock weigh. Where stock weighs nothing (no runs are joined for it) it is still bought: the usual weight then.
 */
const centsPerSecond = ({ settings: { weights } }: Shop): number =>
  (weights.changeover * 10_000) / (3600 * (weights.material || defaultWeights.material));

/** What the work of a step list costs in this shop, by the shear's own times. */
export function workPrices(shop: Shop, shear: Timed): WorkPrices {
  const each = (seconds: number): number =>
    seconds * (1 + standard(shear, 'allowance')) * centsPerSecond(shop);
  return {
    sheet: each(standard(shear, 'sheetLoad')),
    feedAgain: each(standard(shear, 'feedAgain')),
    setting: each(standard(shear, 'backGaugeMove') + SETTING_CHECK_S),
    turn: each(TURN_S),
    singleStroke: each(standard(shear, 'cut')),
    continuousStroke: each(standard(shear, 'cutContinuous')),
    line: each(LAY_TO_LINE_S),
  };
}
