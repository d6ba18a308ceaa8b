const NAMED: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };

/** Characters that XML 1.0 cannot hold even as a reference (section 2.2, Char), among them halves of a pair. */
// oxlint-disable-next-line no-control-regex
const IMPOSSIBLE = /[\u0000-\u0008\u000B\u000C\u000E-\u001F\uFFFE\uFFFF]|\p{Cs}/gu;

/** Text made safe for element content and for attributes in either kind of quotes; line breaks and tabs survive as references. */
export const escapeXml = (text: string): string =>
  text
    .replace(IMPOSSIBLE, '\uFFFD')
    .replace(/[&<>"']/g, (c) => NAMED[c] ?? c)
    .replace(/[\t\n\r\u0085\u2028]/g, (c) => `&#${c.charCodeAt(0)};`);
