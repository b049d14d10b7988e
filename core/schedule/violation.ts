/** The rules that a schedule must keep. */
export type Rule =
  | 'every operation once'
  | 'able machine'
  | 'queue order'
  | 'one at a time'
  | 'changeover'
  | 'open hours'
  | 'duration'
  | 'release'
  | 'routing'
  | 'started'
  | 'frozen'
  | 'pin'
  | 'same order'
  | 'crew'
  | 'held elsewhere'
  | 'terms';

/** A rule of the shop that a schedule breaks. */
export interface Violation {
  readonly rule: Rule;
  /** The operation's id, or the machine's or term's where no single operation is at fault. */
  readonly operation: string;
  /** A sentence. */
  readonly message: string;
}
