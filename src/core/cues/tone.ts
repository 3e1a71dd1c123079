// A tone as data: notes with silences between them. What it sounds like is known before anything renders it.

/** One sounding stretch; a glide where the two frequencies differ. */
export interface Note {
  readonly fromHz: number;
  readonly toHz: number;
  readonly ms: number;
  /** Silence before the next note. */
  readonly restMs: number;
}

export type Tone = readonly Note[];

/** From the first note's start to the last one's end: the last rest is not waited for. */
export const toneMs = (tone: Tone): number =>
  tone.reduce((sum, { ms, restMs }) => sum + ms + restMs, 0) - (tone.at(-1)?.restMs ?? 0);
