// The eventful session with a text of one's choice wherever a text comes from elsewhere: profile, meter, file,
// technician. Names that the profile format holds to letters are given to sections directly where a type allows.
import type { WalkEvent } from '../../src/core/events.js';
import type { Profile } from '../../src/core/profile/profile-format.js';
import { eventful, profile } from './session-events.js';

const withText = (text: string): Profile => ({
  ...profile,
  title: text,
  provenance: { ...profile.provenance, by: text, how: text, source: text },
  connector: { ...profile.connector, title: text, pinOne: text },
  lines: Object.fromEntries(
    Object.entries(profile.lines).map(([name, line]) => [
      name,
      {
        ...line,
        title: text,
        ...(line.chain === undefined
          ? {}
          : {
              chain: [{ joint: text }, { shunt: { part: 'TV1' } }, { part: 'FL1' }, { chip: text }],
            }),
      },
    ]),
  ),
  parts: {
    FL1: { kind: 'filter', title: text, lines: ['D0_P'], where: text },
    TV1: { kind: 'diode', title: text, lines: ['D0_P'] },
  },
});

export const hostileSession = (text: string): readonly WalkEvent[] =>
  eventful.map((event): WalkEvent => {
    switch (event.type) {
      case 'session-opened':
        return {
          ...event,
          program: text,
          link: text,
          profile: { id: text, sha256: text, content: withText(text) },
          driver: { id: text, sha256: text },
        };
      case 'session-resumed':
        return { ...event, program: text };
      case 'meter-spoke':
        return { ...event, text };
      case 'link-changed':
      case 'walk-held':
        return { ...event, detail: text };
      case 'act-taken':
        return event.act === 'note' ? { ...event, text } : event;
      case 'act-refused':
        return { ...event, reason: text };
      case 'press-judged':
        return { ...event, part: text };
      case 'press-compared':
        return { ...event, parts: [text] };
      case 'suspects-ranked':
        return {
          ...event,
          suspects: event.suspects.map((suspect) => ({ ...suspect, id: text, lines: [text] })),
          next: event.next === null ? null : { ...event.next, line: text, part: text },
        };
      default:
        return event;
    }
  });

/** Attacks on HTML, Markdown, spreadsheets, terminals and the direction of writing. */
export const attacks: readonly string[] = [
  '<script>document.title="hit"</script>',
  '"><img src=x onerror=alert(1)>',
  "' onmouseover='alert(1)",
  '</style><style>*{display:none}</style>',
  '</title><h1>hit</h1>',
  '<!-- ',
  ']]><svg/onload=alert(1)>',
  '&lt;b&gt;&#60;i&#62;',
  '[hit](javascript:alert(1)) ![x](http://192.0.2.1/x.png)',
  '<http://192.0.2.1/> http://192.0.2.1/ www.example.invalid a@example.invalid',
  '`code` **bold** _it_ ~~gone~~ | cell | # head',
  '~~~~\n# out of the fence',
  '=HYPERLINK("http://192.0.2.1/","x")',
  '@SUM(1+1)*cmd|calc!A0',
  '+1-1;2\t3',
  '\u202Egnp.exe\u202C\u2066x',
  '\u001b[31mred\u001b]0;title\u0007',
  'a\u0000b\rc\nd\u2028e',
  '{{constructor}} {{alert(1)}} %00',
  `${'x'.repeat(700)}`,
  'زجاج مكسور <b>',
];
