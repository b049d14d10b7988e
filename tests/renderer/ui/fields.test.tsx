// @vitest-environment jsdom
import { cleanup, fireEvent, render, screen } from '@testing-library/react';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { DataTable, type TableColumn } from '../../../renderer/ui/data-table.tsx';
import { DateTimeField } from '../../../renderer/ui/date-time-field.tsx';
import { at, ZONE } from '../../support/builders.ts';

afterEach(cleanup);

describe('a date and time field', () => {
  it('shows and takes the clock on the shop’s wall', () => {
    const onChange = vi.fn();
    render(
      <DateTimeField
        label="Due"
        value={at('2026-12-04', '14:30')}
        timeZone={ZONE}
        usualClock="17:00"
        onChange={onChange}
      />,
    );
    expect(screen.getByLabelText<HTMLInputElement>('Due').value).toBe('2026-12-04');
    expect(screen.getByLabelText<HTMLInputElement>('Time').value).toBe('14:30');
    fireEvent.change(screen.getByLabelText('Due'), { target: { value: '2026-12-07' } });
    expect(onChange).toHaveBeenLastCalledWith(at('2026-12-07', '14:30'));
  });

  it('takes the usual time of day when only a date is given, and nothing for an empty date', () => {
    const onChange = vi.fn();
    render(<DateTimeField label="Due" value={null} timeZone={ZONE} usualClock="17:00" onChange={onChange} />);
    fireEvent.change(screen.getByLabelText('Due'), { target: { value: '2026-12-07' } });
    expect(onChange).toHaveBeenLastCalledWith(at('2026-12-07', '17:00'));
    fireEvent.change(screen.getByLabelText('Due'), { target: { value: '' } });
    expect(onChange).toHaveBeenLastCalledWith(null);
  });
});

describe('a table', () => {
  const rows = [
    { id: 'a', hours: 12 },
    { id: 'b', hours: 3 },
  ];
  const columns: TableColumn<{ id: string; hours: number }>[] = [
    {
      id: 'id',
      label: 'Machine',
      cell: (row) => row.id,
      sort: (row) => row.id,
    },
    {
      id: 'hours',
      label: 'Hours',
      cell: (row) => row.hours,
      sort: (row) => row.hours,
    },
  ];
  const firstCells = () => screen.getAllByRole('rowheader').map((cell) => cell.textContent);

  it('sorts by a column when its heading is pressed, and back when it is pressed again', () => {
    render(<DataTable label="Load" columns={columns} rows={rows} rowId={(row) => row.id} />);
    expect(firstCells()).toEqual(['a', 'b']);
    fireEvent.click(screen.getByRole('columnheader', { name: /Hours/ }));
    expect(firstCells()).toEqual(['b', 'a']);
    fireEvent.click(screen.getByRole('columnheader', { name: /Hours/ }));
    expect(firstCells()).toEqual(['a', 'b']);
  });

  it('says that it is empty', () => {
    render(
      <DataTable label="Load" columns={columns} rows={[]} rowId={(row) => row.id} empty="No machines yet." />,
    );
    expect(screen.getByText('No machines yet.')).toBeTruthy();
  });
});
