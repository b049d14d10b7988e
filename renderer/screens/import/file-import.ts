import { createStore, useStore, type StoreApi } from 'zustand';
import type { OutputOf } from '../../../core/contract/call.ts';
import { contract } from '../../../core/contract/index.ts';
import type { Answers } from '../../../core/import/answers.ts';
import type { ImportKindName } from '../../../core/import/kinds.ts';
import type { Reading } from '../../../core/import/reading.ts';
import { megabytes, MOST } from '../../../core/input-limits.ts';
import { base64Of } from '../../queries/base64.ts';
import { invoke } from '../../queries/invoke.ts';

/** A file as it is sent to the host. */
interface SentFile {
  readonly fileName: string;
  readonly base64: string;
}

interface Earlier {
  readonly file: SentFile;
  readonly answers: Answers;
}

/** What was taken of a file. */
export type Taken = OutputOf<typeof contract.importTake>;

/**
 * A file on its way into the shop: the file itself, what was said about it, and how it is read with that. It outlives the
 * screen, so that nothing said or typed is lost when someone looks at the board in between.
 */
export interface FileImport {
  readonly kind: ImportKindName;
  readonly file: SentFile | null;
  readonly answers: Answers;
  /** How it was read last; while it is `busy`, without what was said meanwhile. */
  readonly reading: Reading | null;
  readonly busy: 'reading' | 'checking' | 'taking' | null;
  readonly trouble: string | null;
  /** What was taken from the file last. */
  readonly taken: Taken | null;
  /** The file before this one, with what was said about it and not taken. */
  readonly before: Earlier | null;
  /** Begin with a file. One that cannot be read leaves what is there as it is. */
  read(file: File): Promise<void>;
  /** Begin with a file that was sent as another kind before. */
  readSent(file: SentFile): Promise<void>;
  /** Say what is known about the file now, and read it again. */
  say(answers: Answers): Promise<void>;
  /** Read it again, against the shop as it is now. */
  again(): Promise<void>;
  take(): Promise<Taken | null>;
  /** On with the file before; this one is then the one before. */
  goBack(): Promise<void>;
  forget(): void;
}

const tooLarge = ({ name }: File): string =>
  `${name} is larger than ${megabytes(MOST.fileBytes)}. Split it into smaller files; nothing was read.`;

const NOTHING = {
  file: null,
  answers: {},
  reading: null,
  busy: null,
  trouble: null,
  taken: null,
  before: null,
} as const;

/** A file about which something was said that is still to be taken. */
const unfinished = ({ file, answers, reading }: FileImport): Earlier | null =>
  file && reading && Object.keys(answers).length > 0 && toDo(reading) > 0 ? { file, answers } : null;

const toDo = ({ counts }: Reading): number => counts.wrong + counts.waiting + counts.changed + counts.new;

type Busy = NonNullable<FileImport['busy']>;

/** Does one thing with the host. What was asked later goes before: an answer that comes after it is not shown. */
function oneByOne(set: (state: Partial<FileImport>) => void) {
  let last = 0;
  return async <R>(
    busy: Busy,
    work: () => Promise<R>,
    show: (result: R) => Partial<FileImport>,
  ): Promise<R | null> => {
    const mine = ++last;
    set({ busy, trouble: null });
    try {
      const result = await work();
      if (mine === last) set({ ...show(result), busy: null });
      return result;
    } catch (error) {
      if (mine === last) set({ trouble: (error as Error).message, busy: null });
      return null;
    }
  };
}

/** The import of one kind of file: choose, look, answer, fix, take. */
const makeFileImport = (kind: ImportKindName): StoreApi<FileImport> =>
  createStore<FileImport>((set, get) => {
    const doing = oneByOne(set);
    const begin = (sent: () => SentFile | Promise<SentFile>, answers: Answers = {}) =>
      doing(
        'reading',
        async () => {
          const file = await sent();
          return { file, answers, reading: await invoke(contract.importRead, { kind, ...file, answers }) };
        },
        (read) => ({ ...NOTHING, ...read, before: unfinished(get()) }),
      );
    return {
      kind,
      ...NOTHING,
      async read(file) {
        if (file.size > MOST.fileBytes) return set({ trouble: tooLarge(file) });
        await begin(async () => ({
          fileName: file.name,
          base64: base64Of(new Uint8Array(await file.arrayBuffer())),
        }));
      },
      async readSent(file) {
        await begin(() => file);
      },
      async say(answers) {
        set({ answers });
        await get().again();
      },
      async again() {
        const { file, answers } = get();
        if (!file) return;
        await doing(
          'checking',
          () => invoke(contract.importRead, { kind, ...file, answers }),
          (reading) => ({ reading }),
        );
      },
      async take() {
        const { file, answers } = get();
        if (!file) return null;
        return doing(
          'taking',
          () => invoke(contract.importTake, { kind, ...file, answers }),
          (taken) => ({ reading: taken.left, taken }),
        );
      },
      async goBack() {
        const { before } = get();
        if (before) await begin(() => before.file, before.answers);
      },
      forget: () => set(NOTHING),
    };
  });

const imports = new Map<ImportKindName, StoreApi<FileImport>>();

/** The one import of a kind in this window. */
export function importOf(kind: ImportKindName): StoreApi<FileImport> {
  const own = imports.get(kind) ?? makeFileImport(kind);
  imports.set(kind, own);
  return own;
}

export const useFileImport = (kind: ImportKindName): FileImport => useStore(importOf(kind));
