import type { Answers } from '../../../core/import/answers.ts';
import type { Reading } from '../../../core/import/reading.ts';
import type { Shop } from '../../../core/shop/state.ts';
import type { FileImport } from './file-import.ts';

/** What is drawn of a file that was read, and the way to say more about it. */
export interface AnswerProps {
  reading: Reading;
  shop: Shop;
  answers: Answers;
  say: FileImport['say'];
}
