import { create } from 'zustand';
import { contract } from '../../../../core/contract/index.ts';
import type { CheckedImport } from '../../../../core/contract/import.ts';
import { invoke } from '../../../queries/invoke.ts';
import { base64Of } from './base64.ts';
import { withCell, withoutRow } from './import-rows.ts';

/** What was taken from a file last. */
interface Taken {
  readonly orders: number;
  readonly lines: number;
  /** The lines among them that are a rush. */
  readonly rush: readonly string[];
}

/**
 * A file on its way into the shop. It outlives the screen, so that mended cells are not lost when someone looks at the
 * board in between.
 */
interface ImportState {
  readonly checked: CheckedImport | null;
  /** Cells were typed since the last check. */
  readonly changed: boolean;
  readonly busy: 'reading' | 'checking' | 'taking' | null;
  readonly trouble: string | null;
  readonly taken: Taken | null;
  read(file: File): Promise<void>;
  mend(row: number, column: number, text: string): void;
  leaveOut(row: number): void;
  recheck(): Promise<void>;
  take(): Promise<Taken | null>;
  forget(): void;
}

/** The contract's limit on a file, as bytes before they are written as text. */
const MOST_BYTES = 29_000_000;

export const useImport = create<ImportState>((set, get) => {
  /** Do one thing with the host; what was read before stays when it fails. */
  const doing = async <T>(
    busy: NonNullable<ImportState['busy']>,
    work: () => Promise<T>,
  ): Promise<T | null> => {
    set({ busy, trouble: null });
    try {
      return await work();
    } catch (error) {
      set({ trouble: (error as Error).message });
      return null;
    } finally {
      set({ busy: null });
    }
  };
  const change = (rows: CheckedImport['rows']) => {
    const { checked } = get();
    if (checked) set({ checked: { ...checked, rows }, changed: true });
  };
  return {
    checked: null,
    changed: false,
    busy: null,
    trouble: null,
    taken: null,
    async read(file) {
      if (file.size > MOST_BYTES) {
        set({ trouble: `${file.name} is larger than 29 MB. Split it into smaller files; nothing was read.` });
        return;
      }
      const checked = await doing('reading', async () =>
        invoke(contract.importCheck, {
          fileName: file.name,
          base64: base64Of(new Uint8Array(await file.arrayBuffer())),
        }),
      );
      if (checked) set({ checked, changed: false, taken: null });
    },
    mend: (row, column, text) => change(withCell(get().checked?.rows ?? [], row, column, text)),
    leaveOut(row) {
      change(withoutRow(get().checked?.rows ?? [], row));
      void get().recheck();
    },
    async recheck() {
      const asked = tableOf(get().checked);
      const checked = asked && (await doing('checking', () => invoke(contract.importRecheck, asked)));
      if (checked) set({ checked, changed: false });
    },
    async take() {
      const asked = tableOf(get().checked);
      const result = asked && (await doing('taking', () => invoke(contract.importTake, asked)));
      if (!result) return null;
      const taken = { orders: result.orders, lines: result.lines, rush: result.rush };
      set({ checked: result.left, changed: false, taken });
      return taken;
    },
    forget: () => set({ checked: null, changed: false, trouble: null, taken: null }),
  };
});

/** What the host is asked to look at again. */
const tableOf = (checked: CheckedImport | null) =>
  checked && { fileName: checked.fileName, header: checked.header, rows: checked.rows };
