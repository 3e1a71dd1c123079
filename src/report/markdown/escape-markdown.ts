// Text made harmless in Markdown (CommonMark with the tables and links of GitHub's dialect): whatever could begin
// a mark, a link, an entity or raw HTML gets a backslash before it.

/** For text from elsewhere. @example escapeMarkdown('**a** <b>') // '\\*\\*a\\*\\* \\<b\\>' */
export const escapeMarkdown = (text: string): string =>
  text.replace(/[\\`*_{}[\]<>()#+\-.!|~&@:=$^]/gu, '\\$&');

/** For a catalogue's own words, in which a full stop is a full stop. */
export const escapeWords = (text: string): string => text.replace(/[\\`*_[\]<>|&]/gu, '\\$&');

/** Names and figures stand as code where their characters allow it. */
export const codeSpan = (text: string): string =>
  /^[^`|\\\s]([^`|\\]*[^`|\\\s])?$/u.test(text) ? `\`${text}\`` : escapeMarkdown(text);
