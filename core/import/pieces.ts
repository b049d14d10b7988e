/** Words for pieces in English, German, French and Spanish; common practice, no source. */
const PIECES =
  /(?<=\d)\s*(?:pcs?|pieces?|ea|each|st|stk|stck|stück|stueck|p|pce|pièces?|u|uds?|pzas?|piezas?)\.?$/iu;

/** "40" of "40 pcs": a count of pieces without the word for them. */
export const withoutPieces = (text: string): string => text.replace(PIECES, '');
