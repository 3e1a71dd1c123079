// What a page may do: show itself, with the one style sheet that is in it, and nothing else. No script, no picture,
// no font, no request, no form, no frame.
import { createHash } from 'node:crypto';

/** For the page's own <meta>; `style` is the text between the style tags, to the letter. */
export const pagePolicy = (style: string): string => {
  const hash = createHash('sha256').update(style).digest('base64');
  return `default-src 'none'; style-src 'sha256-${hash}'; base-uri 'none'; form-action 'none'`;
};
