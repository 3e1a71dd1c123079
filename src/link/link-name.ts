// Reads what stands after `--link`. Refuses anything it does not know in one line that says what is wrong and
// shows a right form; opens nothing.
import { quoted } from '../core/problems.js';

export type Parity = 'none' | 'even' | 'odd' | 'mark' | 'space';

/** What a link name may say about a serial port; the driver's own settings hold for the rest. */
export interface SerialSettings {
  readonly baud?: number;
  readonly dataBits?: 5 | 6 | 7 | 8;
  readonly parity?: Parity;
  readonly stopBits?: 1 | 1.5 | 2;
  readonly dtr?: boolean;
  readonly rts?: boolean;
}

export interface SerialName {
  readonly kind: 'serial';
  readonly path: string;
  readonly settings: SerialSettings;
}

export interface TcpName {
  readonly kind: 'tcp';
  /** Host name or address; an IPv6 address without its brackets. */
  readonly host: string;
  readonly port: number;
}

export type LinkName =
  | SerialName
  | TcpName
  | { readonly kind: 'virtual'; readonly name: string }
  | { readonly kind: 'log'; readonly file: string }
  | { readonly kind: 'stdin' };

/** The message is one line, ready for the user. */
export class LinkNameError extends Error {
  override readonly name = 'LinkNameError';
}

const forms = 'serial:/dev/ttyUSB0?baud=9600, tcp://host:port, virtual:NAME, log:FILE or stdin:';

const wrong = (text: string, says: string): LinkNameError =>
  new LinkNameError(`link ${quoted(text)}: ${says}`);

/** @throws LinkNameError with one line naming what is wrong and a form that would be right. */
export const parseLinkName = (text: string): LinkName => {
  const [, scheme, rest] = /^(\w+):(.*)$/su.exec(text) ?? [];
  if (rest === undefined) throw wrong(text, `write one of ${forms}`);
  if (/\p{Cc}/u.test(rest)) throw wrong(text, 'control characters are not allowed');
  switch (scheme) {
    case 'serial':
      return serialName(text, rest);
    case 'tcp':
      return tcpName(text, rest);
    case 'virtual':
      if (rest === '') throw wrong(text, 'the name is missing, as in virtual:demo');
      return { kind: 'virtual', name: rest };
    case 'log':
      if (rest === '') throw wrong(text, 'the file is missing, as in log:readings.jsonl');
      return { kind: 'log', file: rest };
    case 'stdin':
      if (rest !== '') throw wrong(text, 'nothing may follow stdin:');
      return { kind: 'stdin' };
    default:
      throw wrong(text, `unknown kind of link; write one of ${forms}`);
  }
};

const tcpName = (text: string, rest: string): TcpName => {
  const match =
    /^\/\/(?:\[(?<six>[\da-fA-F:.]+(?:%\w+)?)\]|(?<host>[^:/?#[\]\s]+)):(?<port>\d+)$/u.exec(rest);
  const host = match?.groups?.six ?? match?.groups?.host;
  if (host === undefined) throw wrong(text, 'write tcp://host:port, such as tcp://192.0.2.7:5025');
  const port = Number(match?.groups?.port);
  if (port < 1 || port > 65535) throw wrong(text, 'the TCP port must be 1 to 65535');
  return { kind: 'tcp', host, port };
};

const serialName = (text: string, rest: string): SerialName => {
  const mark = rest.indexOf('?');
  const path = mark < 0 ? rest : rest.slice(0, mark);
  if (path === '') throw wrong(text, 'the port is missing, as in serial:/dev/ttyUSB0?baud=9600');
  const settings: Record<string, unknown> = {};
  for (const pair of mark < 0 ? [] : rest.slice(mark + 1).split('&')) {
    const [key = '', value = ''] = pair.split('=', 2);
    const setting = Object.hasOwn(serialKeys, key) ? serialKeys[key] : undefined;
    if (setting === undefined) {
      throw wrong(
        text,
        `unknown setting ${quoted(key)}; known are ${Object.keys(serialKeys).join(', ')}`,
      );
    }
    if (setting.name in settings) throw wrong(text, `${key} is given twice`);
    const parsed = setting.parse(value);
    if (parsed === undefined) throw wrong(text, `${key} must be ${setting.must}`);
    settings[setting.name] = parsed;
  }
  return { kind: 'serial', path, settings };
};

interface SerialKey {
  readonly name: keyof SerialSettings;
  readonly must: string;
  parse(value: string): unknown;
}

const oneOf =
  (...values: readonly (string | number)[]) =>
  (text: string): string | number | undefined =>
    values.find((value) => String(value) === text);

const whole = (text: string): number | undefined =>
  /^[1-9]\d{0,6}$/u.test(text) ? Number(text) : undefined;

const onOff = (text: string): boolean | undefined =>
  text === 'on' ? true : text === 'off' ? false : undefined;

const serialKeys: Readonly<Record<string, SerialKey>> = {
  baud: { name: 'baud', must: 'a whole number such as 9600', parse: whole },
  parity: {
    name: 'parity',
    must: 'none, even, odd, mark or space',
    parse: oneOf('none', 'even', 'odd', 'mark', 'space'),
  },
  data: { name: 'dataBits', must: '5, 6, 7 or 8', parse: oneOf(5, 6, 7, 8) },
  stop: { name: 'stopBits', must: '1, 1.5 or 2', parse: oneOf(1, 1.5, 2) },
  dtr: { name: 'dtr', must: 'on or off', parse: onOff },
  rts: { name: 'rts', must: 'on or off', parse: onOff },
};
