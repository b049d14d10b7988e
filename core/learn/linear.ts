/** A small symmetric positive definite system, factored once (Cholesky; any textbook of numerical analysis). */
interface Factored {
  solve(right: readonly number[]): number[];
  /** Diagonal of the inverse. */
  inverseDiagonal(): number[];
}

/**
 * @param matrix rows of a symmetric positive definite matrix; only its lower half is read
 * @throws RangeError when it is not positive definite: a caller's bug
 */
export function factor(matrix: readonly (readonly number[])[]): Factored {
  const lower: number[][] = [];
  matrix.forEach((row, i) => {
    const made: number[] = [];
    for (let j = 0; j <= i; j++) {
      const other = j === i ? made : lower[j]!;
      let rest = row[j]!;
      for (let k = 0; k < j; k++) rest -= made[k]! * other[k]!;
      if (j === i && !(rest > 0)) throw new RangeError('factor: matrix is not positive definite');
      made.push(j === i ? Math.sqrt(rest) : rest / other[j]!);
    }
    lower.push(made);
  });
  const solve = (right: readonly number[]): number[] => {
    const x = [...right];
    for (let i = 0; i < x.length; i++) {
      for (let k = 0; k < i; k++) x[i]! -= lower[i]![k]! * x[k]!;
      x[i]! /= lower[i]![i]!;
    }
    for (let i = x.length - 1; i >= 0; i--) {
      for (let k = i + 1; k < x.length; k++) x[i]! -= lower[k]![i]! * x[k]!;
      x[i]! /= lower[i]![i]!;
    }
    return x;
  };
  return {
    solve,
    inverseDiagonal: () => lower.map((_, i) => solve(lower.map((__, j) => (i === j ? 1 : 0)))[i]!),
  };
}
