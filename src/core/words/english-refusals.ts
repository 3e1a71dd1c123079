// What commands refuse, in English.
import type { RefusalWords } from './refusal-words.js';

const mostNamed = 6;

export const englishRefusals: RefusalWords = {
  otherThanSession: (file, kind) =>
    `${file} is ${kind === null ? 'no saved session' : `a ${kind}`}; name a saved session`,
  emptySession: (file) => `${file}: the session holds nothing yet`,
  noSession: (file) => `${file}: no session begins here; name a saved one`,
  nothingToResume: (file) => `${file}: no session begins here; start a new one`,
  nothingToRecheck: (session) =>
    `${session}: nothing was read that could be walked again; walk the connector first`,
  noRecheckOf: (file, session) => `${file} is no recheck of ${session}`,
  notProven: (doubt) => `${doubt}; recheck first, or say with --reason why it counts as repaired`,
  neverReplaced: (file) => `${file} is a session, which is never replaced`,
  learnedFrom: (file) => `${file} is learned from; give another name`,
  givenTwice: (file) => `${file} is given twice`,

  whichMeter:
    'which meter? give --link; --link virtual:demo needs none, `pinwalk ports` lists what is there',
  linkLost: 'the link was lost and had not come back',
  needsDriver: (link) =>
    `link ${link} needs --driver ID; run \`pinwalk ports --identify\` to have one proposed`,
  notAskable: 'only serial: and tcp:// links can be asked what answers',
  notServed: (why) => `the bench cannot be served there: ${why}`,

  whichConnector:
    'which connector? give --profile ID or FILE; `pinwalk check --list` shows the shipped ones',
  whichConnectorForPads: 'for which connector? give --profile ID or FILE',
  logNeedsProfile: 'a reading log needs --profile ID or FILE',
  noLine: (profile, line, known) => {
    const others = known.length > mostNamed ? ' and others' : '';
    return `no pin of profile ${profile} carries a line ${line}; it has ${known.slice(0, mostNamed).join(', ')}${others}`;
  },
  noPart: (part, known) =>
    `the profile has no part ${part}; it has ${known.length === 0 ? 'none' : known.join(', ')}, or name any place with --area`,
  noObservation: (profile, name, known, near) => {
    const instead =
      known.length === 0
        ? 'it asks for none'
        : near === undefined
          ? `it asks for ${known.join(', ')}`
          : `did you mean "${near}"?`;
    return `profile ${profile} asks for no observation "${name}": ${instead}`;
  },
  noProfileName: (name) =>
    `${name} is no name for a profile: name it ID.json, ID of letters, digits and _ - + # .`,
  howManyPins: 'how many pins? give --pins',
  donorNamed: (name) =>
    `--donor-beside: the profile's ${name} is named as the donor's pins are; rename it`,

  behind: (option, why) => `${option}: ${why}`,
  speed: (slowest, fastest) => `write a number from ${slowest} to ${fastest}`,
  jsonOrPlain: 'give --json or --plain, not both',
  tcpOrPty: 'give --tcp PORT or --pty',
  compareOrBeside:
    '--compare is a donor walked before, --donor-beside one walked now; give one of them',
  functionWithWorks: 'give --function and --works together',
  drawNotJudged: 'judge the draw: give --draw as-expected, too-high, too-low or not-known',
  nothingToNote: 'nothing to note: give --draw, or --function with --works',
  outWithoutProfile: '--out goes with --profile ID or FILE',
  partUnnamed: '--part needs the name of a part',
  pressWithoutReadings: '--press goes with --readings, and --part with --press',
  logHasOneForm: 'a reading log is whole and has one form; leave out --plain and --from',
  tooFastForScreen: (fastest) =>
    `--speed max is for --plain and --json; a screen plays up to ${fastest} times as fast`,
  zeroWithoutOhms: (measure) => `--lead-zero takes off ohms; this walk measures ${measure}`,
  referenceWithoutValue: 'a reference reads a value',
  padsOfOtherFunction: (file, learned, walked) =>
    `${file}: these pads were learned in ${learned}, the walk measures ${walked}; learn them in that function`,
  padsTyped: 'pads are touched with a meter, not typed',
  noKeyboard: '--intake without a file needs a keyboard',
  noTerminal: 'keys are learnt at a terminal; there is none',
  leftEarly: 'left before the walk began',
};
