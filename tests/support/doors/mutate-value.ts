import { objectNames, wildJson, wildNumber, wildText, type Draw } from './wild.ts';

type Place = { readonly holder: Record<string, unknown>; readonly key: string };

/** Places looked at: what was made huge or circular is broken enough. */
const MOST_PLACES = 3000;

/** The places of a value, itself left out. */
function placesOf(value: unknown): Place[] {
  const places: Place[] = [];
  const open: unknown[] = [value];
  for (let part = open.pop(); part !== undefined && places.length < MOST_PLACES; part = open.pop()) {
    if (typeof part !== 'object' || part === null || ArrayBuffer.isView(part)) continue;
    const holder = part as Record<string, unknown>;
    for (const key of Object.keys(holder)) {
      places.push({ holder, key });
      if (holder[key] !== undefined) open.push(holder[key]);
    }
  }
  return places;
}

/** Sets a field whatever its name, as reading JSON does. */
const setOwn = (holder: object, key: string, value: unknown): void =>
  void Object.defineProperty(holder, key, { value, enumerable: true, configurable: true, writable: true });

/** One place changed: taken away, put in twice, of another kind, too large, too deep, under a bad name. */
function mutateAt({ holder, key }: Place, draw: Draw, wild: (draw: Draw) => unknown): void {
  const old = holder[key];
  const kind = draw.below(8);
  if (kind === 0) delete holder[key];
  else if (kind === 1) setOwn(holder, draw.of([...objectNames, 'surplus', 'x'.repeat(1000)]), wild(draw));
  else if (kind === 2 && Array.isArray(old) && old.length > 0)
    holder[key] = Array.from(
      { length: draw.of([2, 20, 6000, 50_000]) },
      (_, k): unknown => old[k % old.length],
    );
  else if (kind === 3 && typeof old === 'number')
    holder[key] = draw.chance(50) ? wildNumber(draw) : String(old);
  else if (kind === 3 && typeof old === 'string') holder[key] = wildText(draw);
  else if (kind === 4 && typeof old === 'number') holder[key] = old + draw.of([-1, 1, 0.5, -86_400, 1e6]);
  else if (kind === 4 && typeof old === 'string' && old !== '') holder[key] = slip(old, draw);
  else holder[key] = wild(draw);
}

/** A letter more, less or other, as a slip of the hand makes it. */
function slip(text: string, draw: Draw): string {
  const at = draw.below(text.length);
  return draw.of([
    text.slice(0, at) + text.slice(at + 1),
    `${text}x`,
    text.toUpperCase(),
    ` ${text} `,
    text + text,
  ]);
}

/**
 * A copy of a value with one to three places changed.
 * @param wild what a place may become
 */
export function mutateValue(value: unknown, draw: Draw, wild: (draw: Draw) => unknown = wildJson): unknown {
  const whole = { value: structuredClone(value) };
  for (let times = 1 + draw.below(3); times > 0; times--) {
    const places = placesOf(whole);
    if (places.length > 0 && places.length < MOST_PLACES) mutateAt(draw.of(places), draw, wild);
  }
  return whole.value;
}
