import type { Option } from '../../ui/choice.tsx';

/** Newer runtimes answer by a method, older ones by a property, some not at all. */
interface ZonesOfLocale {
  getTimeZones?: () => readonly string[];
  timeZones?: readonly string[];
}

const LETTERS = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ'];

/** The countries of each zone, in English. */
function countries(): ReadonlyMap<string, readonly string[]> {
  const names = new Intl.DisplayNames('en', { type: 'region', fallback: 'none' });
  const found = new Map<string, string[]>();
  for (const code of LETTERS.flatMap((a) => LETTERS.map((b) => a + b))) {
    const name = names.of(code);
    if (name === undefined) continue;
    const locale = new Intl.Locale('und', { region: code }) as unknown as ZonesOfLocale;
    // Codes of countries that are no more have the name of what followed them.
    for (const zone of locale.getTimeZones?.() ?? locale.timeZones ?? [])
      found.set(zone, [...new Set([...(found.get(zone) ?? []), name])]);
  }
  return found;
}

let known: readonly Option[] | null = null;

/** "Europe/Berlin, Germany": found by city and by country. */
function allZones(): readonly Option[] {
  if (known) return known;
  const of = countries();
  known = Intl.supportedValuesOf('timeZone').map((id) => ({
    id,
    name: [id.replaceAll('_', ' '), ...(of.get(id) ?? [])].join(', '),
  }));
  return known;
}

/** Every zone by name; a system may be set to one that is not listed, as UTC is not. */
export const zonesWith = (kept: string): readonly Option[] =>
  allZones().some(({ id }) => id === kept) ? allZones() : [{ id: kept, name: kept }, ...allZones()];
