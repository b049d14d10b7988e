/**
 * What a text for people in a shop that writes commas must not hold: a figure with a point before its decimals, or one
 * whose thousands a comma parts. Dates and times of the texts under test have neither.
 */
export const foreignToCommas = /\d\.\d|\d,\d{3}(?=[.,]\d)/;
