import { create } from 'zustand';
import type { FileCheck } from '../../../../core/import/file-check.ts';
import { megabytes, MOST } from '../../../../core/input-limits.ts';
import { base64Of } from './base64.ts';
import { withCell, withoutRow } from './import-rows.ts';

/** A file as the host is asked to look at it again. */
type Fixed = Pick<FileCheck, 'fileName' | 'header' | 'rows'>;

/** What the host does with one kind of file. */
interface FileCalls<T> {
  check(file: { fileName: string; base64: string }): Promise<FileCheck>;
  recheck(file: Fixed): Promise<FileCheck>;
  take(file: Fixed): Promise<T & { readonly left: FileCheck }>;
}

/**
 * A file on its way into the shop. It outlives the screen, so that fixed cells are not lost when someone looks at the
 * board in between.
 */
export interface FileImport<T> {
  readonly checked: FileCheck | null;
  /** Cells were typed since the last check. */
  readonly changed: boolean;
  readonly busy: 'reading' | 'checking' | 'taking' | null;
  readonly trouble: string | null;
  /** What was taken from the file last. */
  readonly taken: T | null;
  read(file: File): Promise<void>;
  fix(row: number, column: number, text: string): void;
  leaveOut(row: number): void;
  recheck(): Promise<void>;
  take(): Promise<T | null>;
  forget(): void;
}

const tooLarge = ({ name }: File): string =>
  `${name} is larger than ${megabytes(MOST.csvBytes)}. Split it into smaller files; nothing was read.`;

/** The import of one kind of file: choose, look, fix, take. */
export const makeFileImport = <T extends object>(calls: FileCalls<T>) =>
  create<FileImport<T>>((set, get) => {
    /** Do one thing with the host; what was read before stays when it fails. */
    const doing = async <R>(
      busy: NonNullable<FileImport<T>['busy']>,
      work: () => Promise<R>,
    ): Promise<R | null> => {
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
    const change = (rows: FileCheck['rows']) => {
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
        if (file.size > MOST.csvBytes) return set({ trouble: tooLarge(file) });
        const checked = await doing('reading', async () =>
          calls.check({
            fileName: file.name,
            base64: base64Of(new Uint8Array(await file.arrayBuffer())),
          }),
        );
        if (checked) set({ checked, changed: false, taken: null });
      },
      fix: (row, column, text) => change(withCell(get().checked?.rows ?? [], row, column, text)),
      leaveOut(row) {
        change(withoutRow(get().checked?.rows ?? [], row));
        void get().recheck();
      },
      async recheck() {
        const asked = fixed(get().checked);
        const checked = asked && (await doing('checking', () => calls.recheck(asked)));
        if (checked) set({ checked, changed: false });
      },
      async take() {
        const asked = fixed(get().checked);
        const result = asked && (await doing('taking', () => calls.take(asked)));
        if (!result) return null;
        set({ checked: result.left, changed: false, taken: result });
        return result;
      },
      forget: () => set({ checked: null, changed: false, trouble: null, taken: null }),
    };
  });

const fixed = (checked: FileCheck | null): Fixed | null =>
  checked && { fileName: checked.fileName, header: checked.header, rows: checked.rows };
