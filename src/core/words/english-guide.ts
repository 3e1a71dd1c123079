// The guided start in English.
import type { GuideWords } from './guide-words.js';

export const englishGuide: GuideWords = {
  cautions: [
    'Before you probe: power off, battery, charger and USB out, capacitors discharged.',
    "A meter lead without isolation connects your black lead to this computer's ground.",
    'Hot air, lithium cells and mains can hurt: follow your local codes and the data sheets.',
  ],
  whichMeter: 'Which meter?',
  virtualBench: 'none yet: the virtual bench, with simulated readings',
  typeLink: 'another one: I type its link',
  linkExample: 'Link (serial:/dev/ttyUSB0?baud=9600, tcp://192.0.2.7:5025, stdin:)',
  asking: (at) => `Asking what answers at ${at} …`,
  nothingAnswers: 'Nothing known answers there. Is the meter on, and its data output?',
  whichDriver: 'Which driver speaks with it?',
  whichProfile: 'Which connector?',
  typeProfile: 'another one: I type the path of its profile',
  profileExample: 'Profile file',
  choose: (most) => `1 to ${most}: `,
  notAChoice: (given, most) => `"${given}" is not one of 1 to ${most}.`,
  sameAgain: (command) => `To begin like this at once: ${command}`,
};
