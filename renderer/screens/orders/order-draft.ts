/** Second part of the address: a work order's number, or a plus for a new one. */
export const NEW_ORDER = '+';

const FORM = 'order ';

/** The names of the order dialog's drafts, by the second part of its address. */
export const orderDraft = {
  nameOf: (address: string): string => FORM + address,
  /** null: another form's draft. */
  addressOf: (form: string): string | null => (form.startsWith(FORM) ? form.slice(FORM.length) : null),
};
