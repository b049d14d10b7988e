/** Hand a text to the user as a file; the browser, or the desktop's own dialog, says where it goes. */
export function saveText(name: string, text: string, type = 'text/csv'): void {
  const address = URL.createObjectURL(new Blob([text], { type: `${type};charset=utf-8` }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name.replaceAll('/', '-');
  link.click();
  URL.revokeObjectURL(address);
}
