/** Hands a file to the browser to keep where the maker keeps files. */
export function download(name: string, content: string | Uint8Array<ArrayBuffer>, type: string): void {
  const url = URL.createObjectURL(new Blob([content], { type }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  // The browser reads the address after the click; a minute is long enough for the slowest disk.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}
