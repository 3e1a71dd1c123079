// The settings in English.

import type { ConfigWords } from './config-words.js';
import { reportLanguageCodes } from './report-languages.js';

export const englishConfig: ConfigWords = {
  keys: {
    link: {
      means: 'The meter that walk opens: serial:PATH?baud=N, tcp://HOST:PORT, stdin: and so on.',
      usual: 'asked for at the start',
    },
    driver: {
      means: 'How to talk to that meter: the id of a driver, or its file.',
      usual: 'asked for at the start',
    },
    profile: {
      means: 'The connector that walk begins with: the id of a profile, or its file.',
      usual: 'asked for at the start',
    },
    cues: {
      means: 'What is heard: tones, speech, bell or off.',
      usual: 'tones with a screen, else off',
    },
    reportLanguage: {
      means: `The language of reports: ${reportLanguageCodes.join(', ')}.`,
      usual: 'en',
    },
    technician: {
      means: 'Who works at this bench, for reports and for what is learned from boards.',
      usual: 'nobody is named',
    },
    keysFile: {
      means: 'The keys and pedals that were learnt.',
      usual: 'keys.json in the configuration folder',
    },
    padsFile: {
      means: 'The reply pads that were learnt.',
      usual: 'pads.json in the configuration folder',
    },
    dataFolder: {
      means: 'Where sessions, the shop library and what waits for delivery are kept.',
      usual: "the platform's data folder",
    },
    heatLimits: {
      means:
        'The shop\'s limits for heat on one place: seconds in one "run" and in "total", "setPoint" in degrees Celsius.',
      usual: "the profile's own",
    },
    library: {
      means: "Address of the shop's library, for share fetch.",
      usual: 'none',
    },
    delivery: {
      means: 'Address that takes sessions and reports, for share deliver.',
      usual: 'none',
    },
    tokenFile: {
      means: 'File that holds the token for the shop. Only its owner may be able to read it.',
      usual: 'the environment variable PINWALK_TOKEN',
    },
  },
  read: (path) => `Configuration: ${path}`,
  notThere: (path) => `Configuration: ${path} (not there; pinwalk config --init writes one)`,
  written: (path) => `Configuration written to ${path}`,
  fromFile: 'from the file',
  usual: 'usual',
};
