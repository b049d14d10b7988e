/**
 * The row whose code differs from a new one's only in capitals: nobody can tell the two apart aloud, and some file systems
 * cannot either.
 * @returns what to say of it; null where there is none, or where the code itself stands already
 */
export function otherCase(
  rows: readonly { readonly id: string }[],
  id: string,
): { readonly message: string; readonly advice: string } | null {
  const small = id.toLowerCase();
  const other = rows.find((row) => row.id.toLowerCase() === small);
  if (!other || rows.some((row) => row.id === id)) return null;
  return {
    message: `${id} differs from ${other.id}, which is there already, only in capitals.`,
    advice: `Use ${other.id}, or choose a code that differs more.`,
  };
}
