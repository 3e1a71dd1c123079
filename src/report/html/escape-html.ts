// Text made harmless in HTML, in element content and in quoted attributes alike. Every string that reaches a page
// goes through here; nothing else writes text.
const entities: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
  '`': '&#96;',
};

/** @example escapeHtml('<b a="1">') // '&lt;b a=&quot;1&quot;&gt;' */
export const escapeHtml = (text: string): string =>
  text.replace(/[&<>"'`]/gu, (char) => entities[char] ?? char);
