// What is kept of a drill: one JSON object a line in a file that only grows.
import { z } from 'zod';
import { questionKinds } from './drill-format.js';
import { type DrillRun, pointsOf } from './drill-run.js';

const drillResult = z.strictObject({
  format: z.literal('pinwalk-drill-result/1'),
  wallTime: z.string(),
  drill: z.string(),
  points: z.number().nonnegative(),
  /** Questions there were; each is worth one point. */
  of: z.int().nonnegative(),
  answers: z.array(
    z.strictObject({
      kind: z.enum(questionKinds),
      pin: z.string(),
      line: z.string(),
      answer: z.string(),
      best: z.array(z.string()),
      points: z.number(),
    }),
  ),
});
export type DrillResult = z.infer<typeof drillResult>;

export const resultOf = (drill: string, run: DrillRun, wallTime: string): DrillResult => ({
  format: 'pinwalk-drill-result/1',
  wallTime,
  drill,
  points: pointsOf(run),
  of: run.questions.length,
  answers: run.marked.map(({ question: { kind, pin, line, best }, answer, points }) => ({
    kind,
    pin,
    line,
    answer,
    best: [...best],
    points,
  })),
});

/** The result on a line, or null for a line that is none. */
export const readResult = (line: string): DrillResult | null => {
  try {
    return drillResult.parse(JSON.parse(line));
  } catch {
    return null;
  }
};
