// How cues are heard.
export const cueModes = ['tones', 'speech', 'bell', 'off'] as const;
export type CueMode = (typeof cueModes)[number];
