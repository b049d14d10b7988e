import { MOST } from '../../core/input-limits.ts';

/** What is no element: a comment, a stretch of plain characters. Source: XML 1.0, sections 2.5 and 2.7. */
const STRETCHES = [
  ['<!--', '-->'],
  ['<![CDATA[', ']]>'],
] as const;

/**
 * Whether every element, comment and text of an XML part ends, and soon enough. The reader of spreadsheets begins an open
 * one anew with each piece of the file that it is fed, so that one which never ends takes minutes.
 */
export function marksEnd(xml: string): boolean {
  let at = xml.indexOf('<');
  if ((at === -1 ? xml.length : at) > MOST.markCharacters) return false;
  if (at === -1) return true;
  for (;;) {
    const [, end] = STRETCHES.find(([begin]) => xml.startsWith(begin, at)) ?? ['<', '>'];
    const close = xml.indexOf(end, at);
    if (close === -1) return false;
    const next = xml.indexOf('<', close);
    if ((next === -1 ? xml.length : next) - at > MOST.markCharacters) return false;
    // An element has no “<” inside, not even between quotation marks (section 2.3).
    if (end === '>' && xml.lastIndexOf('<', close) !== at) return false;
    if (next === -1) return true;
    at = next;
  }
}
