import { formatDuration, parseDuration } from '../../core/units/duration.ts';
import { formatLength, parseLength, type LengthUnits } from '../../core/units/length.ts';
import { formatAmount, parseMoney, type Currency } from '../../core/units/money.ts';
import { useDecimals } from '../ui/decimals.ts';
import { ParsedField, type FigureProps } from '../ui/parsed-field.tsx';

/** Millimetres, typed and shown in the shop's units; a unit in the text wins. */
export function Length({ units, ...rest }: FigureProps & { units: LengthUnits }) {
  const decimals = useDecimals();
  return (
    <ParsedField
      {...rest}
      format={(mm) => formatLength(mm, { units, decimals })}
      parse={(text) => parseLength(text, { units, decimals })}
    />
  );
}

/** Seconds, typed as minutes or "1 h 20 min". */
export function Duration(props: FigureProps) {
  const decimals = useDecimals();
  return (
    <ParsedField {...props} format={formatDuration} parse={(text) => parseDuration(text, { decimals })} />
  );
}

/** Whole cents, typed as an amount; the shop's currency stands beside it. */
export function Money({ currency, ...rest }: FigureProps & { currency: Currency }) {
  const decimals = useDecimals();
  return (
    <ParsedField
      {...rest}
      unit={currency ?? undefined}
      format={(amount) => formatAmount(amount, decimals)}
      parse={(text) => parseMoney(text, { decimals })}
    />
  );
}
