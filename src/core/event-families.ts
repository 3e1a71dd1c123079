// Families of events. A script that takes one family whole switches over all of it, so that the type checker names
// every place where an event that is added has still to be thought of.
import type { EventOf, EventType, WalkEvent } from './events.js';
import { jobBodies } from './job/job-events.js';
import { pressBodies } from './press/press-events.js';
import { readyBodies } from './ready/ready-events.js';
import { reworkBodies } from './rework/rework-events.js';
import { suspectBodies } from './suspects/suspect-events.js';

export type JobEvent = EventOf<keyof typeof jobBodies>;
export type PressEvent = EventOf<keyof typeof pressBodies>;
export type ReadyEvent = EventOf<keyof typeof readyBodies>;
export type ReworkEvent = EventOf<keyof typeof reworkBodies>;
export type SuspectEvent = EventOf<keyof typeof suspectBodies>;

const isOneOf =
  <K extends EventType>(bodies: Readonly<Record<K, unknown>>) =>
  (event: WalkEvent): event is EventOf<K> =>
    Object.hasOwn(bodies, event.type);

export const isJobEvent = isOneOf(jobBodies);
export const isPressEvent = isOneOf(pressBodies);
export const isReadyEvent = isOneOf(readyBodies);
export const isReworkEvent = isOneOf(reworkBodies);
export const isSuspectEvent = isOneOf(suspectBodies);
