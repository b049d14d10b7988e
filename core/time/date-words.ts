/** Names of months and weekdays in English, German, French and Spanish, whole and shortened, without accents. */

const MONTHS: readonly (readonly string[])[] = [
  ['january', 'januar', 'janner', 'janvier', 'enero'],
  ['february', 'februar', 'fevrier', 'febrero'],
  ['march', 'marz', 'maerz', 'mars', 'marzo', 'mrz'],
  ['april', 'avril', 'abril'],
  ['may', 'mai', 'mayo'],
  ['june', 'juni', 'juin', 'junio'],
  ['july', 'juli', 'juillet', 'julio'],
  ['august', 'aout', 'agosto'],
  ['september', 'septembre', 'septiembre', 'setiembre'],
  ['october', 'oktober', 'octobre', 'octubre'],
  ['november', 'novembre', 'noviembre'],
  ['december', 'dezember', 'decembre', 'diciembre'],
];

/** Monday first, as in ISO 8601. */
const WEEKDAYS: readonly (readonly string[])[] = [
  ['monday', 'montag', 'lundi', 'lunes'],
  ['tuesday', 'dienstag', 'mardi', 'martes'],
  ['wednesday', 'mittwoch', 'mercredi', 'miercoles'],
  ['thursday', 'donnerstag', 'jeudi', 'jueves'],
  ['friday', 'freitag', 'vendredi', 'viernes'],
  ['saturday', 'samstag', 'sonnabend', 'samedi', 'sabado'],
  ['sunday', 'sonntag', 'dimanche', 'domingo'],
];
const GERMAN_WEEKDAYS = ['mo', 'di', 'mi', 'do', 'fr', 'sa', 'so'];

/** 1 for the first list that has the word or one that begins with it; null: none, or more than one ("jui"). */
function positionOf(word: string, lists: readonly (readonly string[])[]): number | null {
  if (word.length < 3) return null;
  const found = lists.flatMap((names, i) => (names.some((name) => name.startsWith(word)) ? [i + 1] : []));
  return found.length === 1 ? found[0]! : null;
}

/** 1 to 12. @param word in small letters without accents, its dot taken off */
export const monthNamed = (word: string): number | null => positionOf(word, MONTHS);

/** 1 Monday … 7 Sunday. @param word as for `monthNamed` */
export function weekdayNamed(word: string): number | null {
  const german = GERMAN_WEEKDAYS.indexOf(word);
  return german >= 0 ? german + 1 : positionOf(word, WEEKDAYS);
}
