import type { LengthUnits, Units } from '../../core/units/length.ts';
import type { MoneyStyle } from '../../core/units/money.ts';

/** How the shops of most tests write figures, and one that writes commas. */
export const withPoints = (units: LengthUnits): Units => ({ units, decimals: 'point' });
export const inches = withPoints('in');
export const metric = withPoints('mm');
export const metricWithCommas: Units = { units: 'mm', decimals: 'comma' };

/** Amounts of a shop that has not said its currency. */
export const plainMoney: MoneyStyle = { currency: null, decimals: 'point' };
export const money = (currency: string): MoneyStyle => ({ currency, decimals: 'point' });
