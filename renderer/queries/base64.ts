/** As many bytes as `fromCharCode` surely takes at once. */
const AT_ONCE = 32_768;

/** A file's bytes as base64, to cross to the host inside JSON. */
export function base64Of(bytes: Uint8Array): string {
  let text = '';
  for (let at = 0; at < bytes.length; at += AT_ONCE)
    text += String.fromCharCode(...bytes.subarray(at, at + AT_ONCE));
  return btoa(text);
}
