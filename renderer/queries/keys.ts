/** Every query key, so that a push knows what to read again. */
export const keys = {
  status: ['app.status'],
  shop: ['shop.read'],
  history: ['edit.history'],
  /** Kept and published plans, what they compare to, and what was done. */
  plans: ['plans'],
  search: ['search.read'],
  records: ['records.read'],
  chances: ['chances'],
  wouldDo: ['wouldDo'],
  cuts: ['cuts'],
  /** Those runs that are planned already, while the rest still is. */
  cutsSoFar: ['cuts.soFar'],
  why: ['ask.why'],
  rush: ['ask.rush'],
  repair: ['ask.repair'],
  promise: ['ask.promise'],
  /** A longer question's state, by its job. */
  ask: ['ask.read'],
  cutAnswers: ['cuts.read'],
  backups: ['backups.read'],
  /** Closed work: by search, and order by order. */
  archive: ['archive'],
  aside: ['aside.read'],
} as const;
