// How a session begins, as far as it must be known before a link is opened or a file is made.
import type { EventOf, Numbered, WalkEvent } from '../core/events.js';
import type { Job } from '../core/job/job.js';
import type { WalkState } from '../core/walk/state.js';
import type { Journal } from '../session/ports.js';
import type { AccuracyOptions } from './accuracy-option.js';
import type { MeterOptions } from './asked-meter.js';
import type { FeedWish, OpenFeed } from './open-feed.js';
import type { ReferenceAsked } from './ready-option.js';

export interface StartOptions extends AccuracyOptions, MeterOptions {
  readonly profile?: string;
  /** The session of a good board to compare with. */
  readonly compare?: string;
  /** Each pin on a donor board first, then on the patient. */
  readonly donorBeside?: boolean;
  /** Groups to walk, with commas between. */
  readonly groups?: string;
  readonly session?: string;
  readonly resume?: string;
  readonly groundCheck: boolean;
  readonly leadZero?: boolean;
  readonly reference?: ReferenceAsked;
  readonly press?: 'asked' | 'each';
  /** A file of reply pads; false for none. */
  readonly pads?: string | false;
}

/** All that must be known before a link is opened or a file is made. */
export interface Preparation
  extends Pick<FeedWish, 'link' | 'profile' | 'pins' | 'donor' | 'measure' | 'driver'> {
  /** Makes or reopens the session file. Called once the feed is known to fit. */
  readonly begin: (feed: OpenFeed, intake: (t: number) => readonly WalkEvent[]) => Beginning;
  /** What a resumed session knows of the job; empty in a new one. */
  readonly job: Job;
  /** A board that was just brought in, not one that is taken up again. */
  readonly isNewJob: boolean;
}

export interface Beginning {
  readonly path: string;
  readonly journal: Journal;
  readonly state: WalkState;
  /** What the file says about its beginning, for whoever follows. */
  readonly events: readonly Numbered[];
  /** In words, for the technician. */
  readonly notices: readonly string[];
}

/** What a press test alone is made on, or undefined for a walk. */
export type Alone = EventOf<'session-opened'>['pressAlone'];
