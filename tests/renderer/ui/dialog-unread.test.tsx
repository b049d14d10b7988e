// @vitest-environment jsdom
import { cleanup, fireEvent, render, screen } from '@testing-library/react';
import { useState } from 'react';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { Dialog } from '../../../renderer/ui/dialog.tsx';
import { NumberField } from '../../../renderer/ui/number-field.tsx';

afterEach(cleanup);
// What jsdom lacks and an opened dialog asks for.
vi.stubGlobal('CSS', { escape: (text: string) => text });

function Asking({ onClose }: { onClose: () => void }) {
  const [pieces, setPieces] = useState(40);
  return (
    <Dialog title="A line" isOpen onClose={onClose}>
      <NumberField label="Pieces" whole value={pieces} onChange={setPieces} />
    </Dialog>
  );
}

/** Type into the field of a dialog, then press its cross. */
function typedAndClosed(text: string) {
  const onClose = vi.fn();
  render(<Asking onClose={onClose} />);
  fireEvent.change(screen.getByRole('textbox', { name: 'Pieces' }), { target: { value: text } });
  fireEvent.click(screen.getByRole('button', { name: 'Close' }));
  return onClose;
}

describe('a dialog in which a text does not read', () => {
  it('asks before it is closed, and the text stands as typed', () => {
    const onClose = typedAndClosed('4 doz');
    expect(onClose).not.toHaveBeenCalled();
    expect(screen.getByRole('alert').textContent).toMatch(/“4 doz” could not be read/);
    fireEvent.click(screen.getByRole('button', { name: 'Go on typing' }));
    expect(screen.queryByRole('alert')).toBeNull();
    expect(screen.getByRole<HTMLInputElement>('textbox', { name: 'Pieces' }).value).toBe('4 doz');
  });

  it('closes when that is wanted', () => {
    const onClose = typedAndClosed('4 doz');
    fireEvent.click(screen.getByRole('button', { name: 'Close without it' }));
    expect(onClose).toHaveBeenCalledOnce();
  });

  it('closes at once where every text reads', () => {
    expect(typedAndClosed('48')).toHaveBeenCalledOnce();
  });
});
