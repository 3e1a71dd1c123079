// Makes the link a name asks for: serial port, TCP or standard input. Opens nothing yet: that is the link's
// `open`. The other kinds of link names are feeds of their own.
import { cleanText } from '../core/clean-text.js';
import type { Clock, Link } from '../session/ports.js';
import type { LinkDriver } from './line-cutter.js';
import type { LinkName } from './link-name.js';
import { createReconnectingLink, type Patience } from './reconnect.js';
import { dialSerial, serialTitle, wireOf } from './serial-dial.js';
import { createSerialFinder } from './serial-finder.js';
import { createStdinLink } from './stdin-link.js';
import { dialTcp, tcpAddress } from './tcp-dial.js';

export type OpenableName = Extract<LinkName, { kind: 'serial' | 'tcp' | 'stdin' }>;

export interface OpenLinkOptions {
  readonly clock: Clock;
  readonly patience: Patience;
}

const longestTitle = 100;

export const openLink = (
  name: OpenableName,
  driver: LinkDriver,
  { clock, patience }: OpenLinkOptions,
): Link => {
  switch (name.kind) {
    case 'serial': {
      const wire = wireOf(driver.wire.serial, name.settings);
      const dial = dialSerial(wire, createSerialFinder(name.path), name.path);
      const title = cleanText(serialTitle(name, wire), longestTitle);
      return createReconnectingLink({ title, dial, driver, clock, patience });
    }
    case 'tcp': {
      const title = cleanText(`TCP ${tcpAddress(name)}`, longestTitle);
      return createReconnectingLink({ title, dial: dialTcp(name), driver, clock, patience });
    }
    case 'stdin':
      return createStdinLink(clock);
  }
};
