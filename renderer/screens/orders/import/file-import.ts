import { create } from 'zustand';
import type { OutputOf } from '../../../../core/contract/call.ts';
import { contract } from '../../../../core/contract/index.ts';
import type { Answers } from '../../../../core/import/answers.ts';
import type { ImportKindName } from '../../../../core/import/kinds.ts';
import type { Reading } from '../../../../core/import/reading.ts';
import { megabytes, MOST } from '../../../../core/input-limits.ts';
import { invoke } from '../../../queries/invoke.ts';
import { base64Of } from './base64.ts';
import { withCell } from './import-rows.ts';

/** What was taken of a file. */
export type Taken = OutputOf<typeof contract.importTake>;

/**
 * A file on its way into the shop: the file itself, what was said about it, and how it is read with that. It outlives the
 * screen, so that fixed cells are not lost when someone looks at the board in between.
 */
export interface FileImport {
  readonly file: { readonly fileName: string; readonly base64: string } | null;
  readonly answers: Answers;
  readonly reading: Reading | null;
  /** Cells were typed since it was read. */
  readonly changed: boolean;
  readonly busy: 'reading' | 'checking' | 'taking' | null;
  readonly trouble: string | null;
  /** What was taken from the file last. */
  readonly taken: Taken | null;
  read(file: File): Promise<void>;
  /** Say something about the file, and read it again. */
  say(more: Answers): Promise<void>;
  /** Type a cell again; it counts when the file is read again. */
  fix(row: number, field: string, text: string): void;
  leaveOut(row: number): Promise<void>;
  recheck(): Promise<void>;
  take(): Promise<Taken | null>;
  forget(): void;
}

const tooLarge = ({ name }: File): string =>
  `${name} is larger than ${megabytes(MOST.fileBytes)}. Split it into smaller files; nothing was read.`;

/** A cell typed again; only how it was typed last counts. */
const typedAgain = (answers: Answers, cell: NonNullable<Answers['cells']>[number]): Answers => ({
  ...answers,
  cells: [...(answers.cells ?? []).filter((c) => c.row !== cell.row || c.field !== cell.field), cell],
});

const NOTHING = {
  file: null,
  answers: {},
  reading: null,
  changed: false,
  trouble: null,
  taken: null,
} as const;

/** The import of one kind of file: choose, look, answer, fix, take. */
export const makeFileImport = (kind: ImportKindName) =>
  create<FileImport>((set, get) => {
    /** Do one thing with the host; what was read before stays when it fails. */
    const doing = async <R>(
      busy: NonNullable<FileImport['busy']>,
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
    const asked = (answers: Answers) => {
      const { file } = get();
      return file && { kind, ...file, answers };
    };
    const readAgain = async (answers: Answers): Promise<void> => {
      const input = asked(answers);
      const reading = input && (await doing('checking', () => invoke(contract.importRead, input)));
      if (reading) set({ answers, reading, changed: false });
    };
    return {
      ...NOTHING,
      busy: null,
      async read(file) {
        if (file.size > MOST.fileBytes) return set({ trouble: tooLarge(file) });
        const read = await doing('reading', async () => {
          const sent = { fileName: file.name, base64: base64Of(new Uint8Array(await file.arrayBuffer())) };
          return { file: sent, reading: await invoke(contract.importRead, { kind, ...sent, answers: {} }) };
        });
        if (read) set({ ...NOTHING, ...read });
      },
      say: (more) => readAgain({ ...get().answers, ...more }),
      fix(row, field, text) {
        const { answers, reading } = get();
        set({
          answers: typedAgain(answers, { row, field, text }),
          reading: reading && withCell(reading, row, field, text),
          changed: true,
        });
      },
      leaveOut: (row) => {
        const { answers } = get();
        return readAgain({ ...answers, leaveOut: [...(answers.leaveOut ?? []), row] });
      },
      recheck: () => readAgain(get().answers),
      async take() {
        const input = asked(get().answers);
        const taken = input && (await doing('taking', () => invoke(contract.importTake, input)));
        if (taken) set({ reading: taken.left, changed: false, taken });
        return taken;
      },
      forget: () => set(NOTHING),
    };
  });
