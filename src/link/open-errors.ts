// Says in one plain line why a port or an address could not be opened, or why it went away, and what to do.
// Understands system error codes and serialport's messages; what it does not know it passes on, cleaned.
import { cleanText } from '../core/clean-text.js';
import type { Gone } from './connection.js';

const longestReason = 200;

const codeOf = (error: unknown): string =>
  error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : '';

const messageOf = (error: unknown): string =>
  (error instanceof Error ? error.message : String(error)).replace(/^Error:? /u, '');

type Row = readonly [matches: RegExp, says: (name: string) => string, absent?: 'absent'];

const firstMatch = (rows: readonly Row[], error: unknown, name: string): Gone => {
  const text = `${codeOf(error)} ${messageOf(error)}`;
  const row = rows.find(([matches]) => matches.test(text));
  const says = row ? row[1](name) : `${name}: ${messageOf(error)}`;
  return { reason: cleanText(says, longestReason), absent: row?.[2] === 'absent' };
};

const serialRows: readonly Row[] = [
  [
    /ENOENT|ENXIO|ENODEV|No such (file|device)|File not found/u,
    (path) => `no such port: ${path}; run \`pinwalk ports\` to see what is there`,
    'absent',
  ],
  [
    /EBUSY|EAGAIN|lock port|resource busy|Access denied/iu,
    (path) => `${path} is in use by another program; close that one first`,
  ],
  [
    /EACCES|EPERM|Permission denied/u,
    (path) =>
      `not allowed to open ${path}; join the group that owns it (often dialout: sudo usermod -aG dialout NAME) and log in again`,
  ],
  [/ENOTTY|Inappropriate ioctl|not a character device/u, (path) => `${path} is not a serial port`],
];

export const serialOpenError = (error: unknown, path: string): Gone =>
  firstMatch(serialRows, error, path);

const tcpRows: readonly Row[] = [
  [
    /ECONNREFUSED/u,
    (at) => `nothing listens at ${at}; is the meter on and its LAN port enabled?`,
    'absent',
  ],
  [/ENOTFOUND|EAI_AGAIN/u, (at) => `no host of that name: ${at}; write its address instead`],
  [
    /EHOSTUNREACH|ENETUNREACH/u,
    (at) => `${at} cannot be reached from here; check the network`,
    'absent',
  ],
  [/ETIMEDOUT/u, (at) => `${at} does not answer; is it on and on this network?`, 'absent'],
  [/ECONNRESET|EPIPE/u, (at) => `${at} cut the connection`],
];

export const tcpError = (error: unknown, at: string): Gone => firstMatch(tcpRows, error, at);
