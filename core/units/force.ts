/** Kilopounds per square inch, from the exact pound-force and inch. */
export const MPA_PER_KSI = 6.894757;

/** A brake's force as machines are rated for it here: "90 metric tonnes". Named in full, for a US ton is less. */
export const formatTonnes = (tonnes: number | string): string => `${tonnes} metric tonnes`;
