import type { Shop } from '../../../../core/shop/state.ts';

/** The metal that most of a part's lines are in; the shop's first where it has none; null when the shop has no metal. */
export function mostAsked(shop: Shop, partId: string): { materialId: string; gauge: string } | null {
  const counts = new Map<string, { materialId: string; gauge: string; lines: number }>();
  for (const { partId: asked, materialId, gauge } of shop.line) {
    if (asked !== partId) continue;
    const key = `${materialId} ${gauge}`;
    counts.set(key, { materialId, gauge, lines: (counts.get(key)?.lines ?? 0) + 1 });
  }
  const most = [...counts.values()].toSorted((a, b) => b.lines - a.lines)[0];
  if (most) return most;
  const first = shop.material[0];
  const gauge = first?.gauges[0]?.label;
  return first && gauge !== undefined ? { materialId: first.id, gauge } : null;
}
