import { createContext, useContext, useEffect, useId } from 'react';

/** Texts in a dialog that do not read, each by its field: they stand nowhere else and go with it. */
export const UnreadTexts = createContext<Map<string, string> | null>(null);

/** Tells the dialog around a field of its text while that does not read. @param text null: it reads */
export function useUnreadText(text: string | null): void {
  const texts = useContext(UnreadTexts);
  const field = useId();
  useEffect(() => {
    if (texts === null || text === null) return;
    texts.set(field, text);
    return () => void texts.delete(field);
  }, [texts, field, text]);
}
