// Finds out what answers at a port or an address, and which driver fits. Listens before it asks; what it sends
// is `*IDN?`, the request characters of known drivers, and the set-up of a driver that is tried. Proposes with
// evidence in words and decides nothing.
import type { Driver } from '../core/meter/driver-format.js';
import { driversForIdentity } from '../core/meter/propose-driver.js';
import { bytesOf } from '../core/meter/wire-text.js';
import { quoted } from '../core/problems.js';
import type { Clock } from '../session/ports.js';
import type { Dial } from './connection.js';
import { identityIn, keyEvidence, streamEvidence } from './identify-evidence.js';
import { openProbe, type Probe } from './identify-probe.js';
import { linkText, settingsToTry } from './identify-settings.js';
import { tryDriver } from './identify-trial.js';
import type { SerialName, TcpName } from './link-name.js';
import { dialSerial, type SerialWire, serialTitle } from './serial-dial.js';
import { fixedFinder } from './serial-finder.js';
import { dialTcp, tcpAddress } from './tcp-dial.js';

export interface Proposal {
  /** Id of the driver. */
  readonly driver: string;
  /** What to write after `--link`. */
  readonly link: string;
  /** In words, cleaned. */
  readonly evidence: string;
}

export interface Identification {
  /** Best first; empty where nothing known answers. */
  readonly proposals: readonly Proposal[];
  /** What else was noticed, or why nothing could be tried. */
  readonly notes: readonly string[];
}

export interface IdentifyOptions {
  readonly clock: Clock;
  /** Told what is being tried. */
  readonly trying?: (says: string) => void;
  readonly dialSerialAs?: (name: SerialName, wire: SerialWire) => Dial;
}

const listenS = 1.2;
/** A slow meter sends two or three lines a second, and the first one heard may be half a line. */
const listenOnS = 1.8;
const answerS = 0.8;
const trialS = 4;

const realDial = (name: SerialName, wire: SerialWire): Dial =>
  dialSerial(wire, fixedFinder(name.path), name.path);

export const identify = (
  name: SerialName | TcpName,
  drivers: readonly Driver[],
  options: IdentifyOptions,
): Promise<Identification> =>
  name.kind === 'tcp'
    ? identifyTcp(name, drivers, options)
    : identifySerial(name, drivers, options);

const identifyTcp = async (
  name: TcpName,
  drivers: readonly Driver[],
  { clock, trying }: IdentifyOptions,
): Promise<Identification> => {
  const at = tcpAddress(name);
  trying?.(at);
  const link = (): string => `tcp://${at}`;
  return examine(dialTcp(name), { drivers, keyed: drivers, at, link, clock });
};

const identifySerial = async (
  name: SerialName,
  drivers: readonly Driver[],
  { clock, trying, dialSerialAs = realDial }: IdentifyOptions,
): Promise<Identification> => {
  const notes: string[] = [];
  for (const setting of settingsToTry(name, drivers)) {
    const at = serialTitle(name, setting.wire);
    trying?.(at);
    const link = (driver: Driver): string => linkText(name.path, setting.wire, driver);
    const dial = dialSerialAs(name, setting.wire);
    const found = await examine(dial, { drivers, keyed: setting.drivers, at, link, clock });
    if (found.proposals.length > 0) return found;
    notes.push(...found.notes);
    if (found.unreachable) break;
  }
  return { proposals: [], notes };
};

interface Examined extends Identification {
  readonly unreachable?: boolean;
}

interface Scene {
  readonly drivers: readonly Driver[];
  /** Drivers whose request character may be sent at this setting. */
  readonly keyed: readonly Driver[];
  readonly at: string;
  readonly link: (driver: Driver) => string;
  readonly clock: Clock;
}

const examine = async (dial: Dial, scene: Scene): Promise<Examined> => {
  let probe: Probe;
  try {
    probe = await openProbe(dial, scene.clock);
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    return { proposals: [], notes: [reason], unreachable: true };
  }
  try {
    const heard = await probe.listen(listenS, listenOnS);
    if (heard.length > 0) return listened(heard, scene);
    return (await askedName(probe, scene)) ?? (await askedKeys(probe, scene));
  } finally {
    await probe.close();
  }
};

const listened = (heard: Uint8Array, { drivers, at, link }: Scene): Examined => {
  const proposals = drivers.flatMap((driver) => {
    const evidence = driver.talk.style === 'stream' ? streamEvidence(driver, heard) : undefined;
    return evidence ? [{ driver: driver.id, link: link(driver), evidence }] : [];
  });
  const note = `something talks at ${at}, but no driver reads it: ${quoted(bytesText(heard))}`;
  return { proposals, notes: proposals.length > 0 ? [] : [note] };
};

/** The leading line end closes whatever an earlier try left in the meter's input. */
const question = bytesOf('\r\n*IDN?\r\n', 'ascii');

const askedName = async (probe: Probe, scene: Scene): Promise<Examined | undefined> => {
  const identity = identityIn(await probe.ask(question, answerS));
  if (identity === undefined) return undefined;
  const named = `it answers *IDN? with ${quoted(identity)}`;
  const proposals: Proposal[] = [];
  for (const driver of driversForIdentity(scene.drivers, identity)) {
    const { read, errors } = await tryDriver(probe, driver, scene.clock, trialS);
    if (!read || errors.length > 0) continue;
    const evidence = `${named}; set up as ${driver.id} it reads without an error`;
    proposals.push({ driver: driver.id, link: scene.link(driver), evidence });
  }
  const note = `${named}, but no driver reads it without an error`;
  return { proposals, notes: proposals.length > 0 ? [] : [note] };
};

const askedKeys = async (probe: Probe, { keyed, link }: Scene): Promise<Examined> => {
  for (const driver of keyed) {
    if (driver.talk.style !== 'key') continue;
    const { key } = driver.talk;
    const sent = bytesOf(key + driver.wire.sendEnd, driver.wire.encoding);
    const evidence = keyEvidence(driver, key, await probe.ask(sent, answerS));
    if (evidence)
      return { proposals: [{ driver: driver.id, link: link(driver), evidence }], notes: [] };
  }
  return { proposals: [], notes: [] };
};

const bytesText = (bytes: Uint8Array): string =>
  Buffer.from(bytes.subarray(0, 60)).toString('latin1');
