// Recognises an adapter that comes back under another device name, or another adapter under the old name.
// Pure. Refuses to guess: without a mark that tells it apart, only the old path counts.
import type { PortEntry } from './list-ports.js';

/** What the port looked like while it was open, and what else was plugged in at that time. */
export interface RememberedDevice {
  readonly entry: PortEntry;
  readonly others: readonly string[];
}

/** Undefined where the listing does not know the path; a `by-id` name needs no memory, it stays the same. */
export const rememberDevice = (
  ports: readonly PortEntry[],
  path: string,
): RememberedDevice | undefined => {
  const entry = ports.find((port) => port.path === path);
  if (entry === undefined) return undefined;
  return { entry, others: ports.filter((port) => port !== entry).map((port) => port.path) };
};

/** Vendor, product and serial number of the adapter, where it has all three. */
const usbMark = ({ vendorId, productId, serialNumber }: PortEntry): string | undefined =>
  vendorId && productId && serialNumber ? `${vendorId}:${productId}:${serialNumber}` : undefined;

export type Whereabouts =
  | { readonly found: string }
  /** Something sits at the old path, but it is not the device that was there. */
  | { readonly stranger: string }
  | { readonly found: null };

/**
 * Where the remembered device is now. An adapter with a serial number is known by it. One without is known by
 * its `by-id` name, and then only on a path where nothing else was before; its old path does not make another of it.
 */
export const findDevice = (
  ports: readonly PortEntry[],
  { entry, others }: RememberedDevice,
): Whereabouts => {
  const mark = usbMark(entry);
  const atOldPath = ports.find((port) => port.path === entry.path);
  if (mark !== undefined) {
    const same = ports.find((port) => usbMark(port) === mark);
    if (same) return { found: same.path };
    const other = atOldPath && usbMark(atOldPath);
    if (other !== undefined) return { stranger: entry.path };
  }
  if (entry.byId !== undefined && atOldPath?.byId !== undefined && atOldPath.byId !== entry.byId) {
    const elsewhere = sameName(ports, entry, others);
    return elsewhere === undefined ? { stranger: entry.path } : { found: elsewhere };
  }
  if (atOldPath) return { found: entry.path };
  return { found: sameName(ports, entry, others) ?? null };
};

const sameName = (
  ports: readonly PortEntry[],
  { byId }: PortEntry,
  others: readonly string[],
): string | undefined =>
  ports.find((port) => byId !== undefined && port.byId === byId && !others.includes(port.path))
    ?.path;
