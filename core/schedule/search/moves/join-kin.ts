import { anyOperation, lateOperation, type Ground } from './ground.ts';

/** Moves one operation right before or after another that asks for the same setup. */
export function joinKin(ground: Ground): boolean {
  const { trial, rng, kin } = ground;
  const { home, rank } = trial.live;
  const o = rng.next() < 0.3 ? lateOperation(ground) : anyOperation(ground);
  const others = kin[o]!;
  const other = others[rng.below(others.length)]!;
  if (other === o) return false;
  const m = home[o]!;
  const n = home[other]!;
  const after = rng.next() < 0.5 ? 1 : 0;
  let place = rank[other]! + after;
  if (m === n && rank[o]! < place) place -= 1;
  if (m === n && place === rank[o]) return false;
  trial.live.shift(m, rank[o]!, 1, n, place);
  return true;
}
