import {
  NO_LOT,
  PAINT_WORDS,
  paintSystem,
  type Film,
  type Lot,
  type StockKnows,
} from '../../core/material/lot.ts';
import { Select } from '../ui/choice.tsx';
import { TextField } from '../ui/text-field.tsx';

interface Props {
  /** What the shop keeps; null: nothing, then no field is shown. */
  knows: StockKnows | null;
  lot: Lot;
  /** What an empty field means: "not on record" of a sheet, "any" of a line. */
  empty: string;
  onChange: (patch: Partial<Lot>) => void;
  error?: ((field: keyof Lot) => string | undefined) | undefined;
}

/** Dye lot, paint system and film, as far as the shop tells sheets apart by them. */
export function LotFields({ knows, lot, empty, onChange, error }: Props) {
  const paints = paintSystem.options.map((id) => ({ id: id as string, name: PAINT_WORDS[id] }));
  return (
    <>
      {knows?.lot && (
        <TextField
          label="Dye lot"
          value={lot.lot}
          onChange={(name) => onChange({ lot: name })}
          help={`empty: ${empty}`}
          error={error?.('lot')}
        />
      )}
      {knows?.paint && (
        <Select
          label="Paint system"
          options={[{ id: '', name: empty }, ...paints]}
          value={lot.paint ?? ''}
          onChange={(id) =>
            onChange({ paint: paintSystem.options.find((one) => one === id) ?? NO_LOT.paint })
          }
          error={error?.('paint')}
        />
      )}
      {knows?.film && (
        <Select
          label="Protective film"
          options={[
            { id: '', name: empty },
            { id: 'with', name: 'with film' },
            { id: 'without', name: 'without film' },
          ]}
          value={lot.film ?? ''}
          onChange={(id) => onChange({ film: id === '' ? null : (id as Film) })}
          error={error?.('film')}
        />
      )}
    </>
  );
}
