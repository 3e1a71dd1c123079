// What is said of a shop's library and of deliveries to it.
import type { ShareFault } from '../share-fault.js';

export interface ShareWords {
  readonly kinds: Readonly<Record<'profile' | 'driver' | 'drill', string>>;
  fault(found: ShareFault): string;
  /** `name`: kind and id. */
  brought(outcome: 'fetched' | 'current' | 'withdrawn', name: string, version: string): string;
  notBrought(name: string, why: string): string;
  readonly indexRefused: string;
  fetched(fetched: number, current: number, withdrawn: number, failed: number): string;
  readonly offlineStill: string;
  noAddress(key: 'library' | 'delivery', option: string): string;
  badAddress(text: string): string;
  token(slip: 'unreadable' | 'open-to-others' | 'no-token', file: string | null): string;
  queued(path: string, withCustomerData: boolean): string;
  delivered(path: string): string;
  kept(path: string, why: string): string;
  deliveredAll(delivered: number, waiting: number): string;
  waiting(path: string, bytes: number, attempts: number, withCustomerData: boolean): string;
  readonly nothingWaits: string;
  /** `to`: the address that must be given again; null where the configuration holds it. */
  howToRetry(to: string | null): string;
  reportNamesCustomer(file: string): string;
  notAReport(file: string): string;
  tooLarge(file: string, mostBytes: number): string;
  redacted(file: string, left: number): string;
  indexed(file: string, entries: number): string;
  nothingToIndex(folder: string): string;
}
