// A shop's library and deliveries in English.
import type { ShareFault } from '../share-fault.js';
import type { ShareWords } from './share-words.js';

const size = (bytes: number): string =>
  bytes < 100_000
    ? `${bytes.toLocaleString('en-US')} bytes`
    : `${Math.ceil((bytes / 1024 / 1024) * 10) / 10} MB`;

const answered = (status: number): string => {
  if (status === 401 || status === 403) return 'does not let us in; check the token';
  if (status === 404) return 'has nothing there; check the address';
  if (status === 413) return 'takes nothing as large as this';
  if (status === 429) return 'asks to be left alone for a while; try again later';
  if (status >= 500) return 'has trouble of its own; try again later';
  return 'refuses; ask whoever runs it';
};

const fault = (found: ShareFault): string => {
  switch (found.fault) {
    case 'unreachable':
      return `${found.at} cannot be reached (${found.why}); check the address and the network`;
    case 'too-slow':
      return `${found.at} did not finish within ${Math.ceil(found.seconds)} s; try again later`;
    case 'answered':
      return `${found.at} answered ${found.status}: the server ${answered(found.status)}`;
    case 'cut-short':
      return `${found.at} stopped in the middle of its answer; try again`;
    case 'too-large':
      return `${found.at} sends more than ${size(found.mostBytes)}, more than there should be`;
    case 'sent-elsewhere':
      return `${found.at} sends us on to ${found.to}; if that is right, give that address`;
    case 'sent-in-circles':
      return `${found.at} sends us in circles; ask whoever runs it`;
    case 'token-in-clear':
      return `${found.at} would be told the token unencrypted; give an https address`;
    case 'wrong-hash':
      return `${found.at} is not what the index lists; ask for a new index`;
    case 'changed-on-disk':
      return 'it was changed in the outbox; deliver the session again';
  }
};

const files = (count: number): string => `${count} ${count === 1 ? 'file' : 'files'}`;

export const englishShare: ShareWords = {
  kinds: { profile: 'profile', driver: 'driver', drill: 'drill' },
  fault,
  brought: (outcome, name, version) =>
    ({
      fetched: `${name}: fetched, version ${version}`,
      current: `${name}: up to date, version ${version}`,
      withdrawn: `${name}: no longer in the library, removed`,
    })[outcome],
  notBrought: (name, why) => `${name}: left as it was: ${why}`,
  indexRefused: 'the index of the library cannot be used; nothing was changed',
  fetched: (fetched, current, withdrawn, failed) =>
    `Library: ${fetched} fetched, ${current} up to date, ${withdrawn} removed, ${failed} not fetched.`,
  offlineStill: 'What was fetched before stays and works without the network.',
  noAddress: (key, option) => `which address? give ${option} URL, or "${key}" in the configuration`,
  badAddress: (text) => `${text} is no address; write one such as https://shop.example/library/`,
  token: (slip, file) => {
    const at = file ?? 'the environment variable PINWALK_TOKEN';
    if (slip === 'unreadable') return `the token file ${at} cannot be read; check the path`;
    if (slip === 'no-token') return `${at} holds no token: one line of letters and digits`;
    return `the token file ${at} can be read by others; close it with: chmod 600`;
  },
  queued: (path, withCustomerData) =>
    `${path}: ready, ${withCustomerData ? 'with customer data' : 'customer data taken out'}`,
  delivered: (path) => `${path}: delivered`,
  kept: (path, why) => `${path}: kept in the outbox: ${why}`,
  deliveredAll: (delivered, waiting) => `${files(delivered)} delivered, ${files(waiting)} waiting.`,
  waiting: (path, bytes, attempts, withCustomerData) =>
    `${path}  ${size(bytes)}, tried ${attempts === 1 ? 'once' : `${attempts} times`}${
      withCustomerData ? ', with customer data' : ''
    }`,
  nothingWaits: 'Nothing waits to be delivered.',
  howToRetry: (to) =>
    `Try again with \`pinwalk share outbox --retry${to === null ? '' : ` --to ${to}`}\`.`,
  reportNamesCustomer: (file) =>
    `${file} may name the customer; make it from \`pinwalk share redact SESSION --out FILE\`, or give --with-customer-data`,
  notAReport: (file) =>
    `${file} is no report: give an .html, .md or .csv file made by pinwalk report`,
  tooLarge: (file, mostBytes) => `${file} is larger than ${size(mostBytes)}; send it another way`,
  redacted: (file, left) =>
    `Written to ${file}: ${left} events, customer data taken out. Names on photos, in part names or in titles of your own profile are yours to look for.`,
  indexed: (file, entries) =>
    `Index of ${entries} ${entries === 1 ? 'entry' : 'entries'} written to ${file}`,
  nothingToIndex: (folder) =>
    `${folder} holds nothing to share: put files into profiles, drivers and drills there`,
};
