import { createContext, useContext } from 'react';
import type { DecimalMark } from '../../core/units/number.ts';

/** The mark before decimals in figures that are typed here; the shop's, once there is one. */
export const Decimals = createContext<DecimalMark>('point');
export const useDecimals = (): DecimalMark => useContext(Decimals);
