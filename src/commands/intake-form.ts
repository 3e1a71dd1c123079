// The questions of intake at the keyboard, one line each: what is known already is not asked, nothing must be
// answered, a dash leaves out the rest, and an angle goes back to the question before.
import { cleanText } from '../core/clean-text.js';
import type { Given } from '../core/job/given.js';
import type { Answer, IntakeFields } from '../core/job/job-events.js';
import type { Profile } from '../core/profile/profile-format.js';
import { askedAs } from '../core/words/describe-triage.js';
import type { IntakeField, JobWords } from '../core/words/job-words.js';
import { FileError } from '../store/file-error.js';
import type { Asking } from './asking.js';

export interface FormWorld extends Asking {
  /** @throws FileError when it cannot be attached. */
  attach(file: string): Given['photos'][number];
}

/** Thrown by the dash. */
class Enough extends Error {}
/** Thrown by the angle: the question before once more. */
class Back extends Error {}

/** One question; asked again, it keeps what was answered where nothing is said. */
type Step = () => Promise<void>;

export const askIntake = async (
  known: Given,
  profile: Profile,
  world: FormWorld,
  words: JobWords,
): Promise<Given> => {
  const { form } = words;
  const fields: Record<string, string> = {};
  const photos: Given['photos'][number][] = [];
  const observed: Record<string, Answer> = {};
  const ask = async (question: string): Promise<string> => {
    const answer = await world.ask(question.endsWith('?') ? `${question} ` : `${question}: `);
    if (answer === '-') throw new Enough();
    if (answer === '<') throw new Back();
    return answer;
  };
  const yesOrNo = async (question: string): Promise<'yes' | 'no' | null> => {
    for (;;) {
      const answer = await ask(question);
      if (answer === '') return null;
      if (/^y(es)?$/iu.test(answer)) return 'yes';
      if (/^no?$/iu.test(answer)) return 'no';
      world.say(form.notAnAnswer(cleanText(answer, 20)));
    }
  };
  const askFields = (Object.keys(form.ask) as IntakeField[])
    .filter((field) => known.fields[field] === undefined)
    .map(
      (field): Step =>
        async () => {
          const question = form.ask[field];
          const answer =
            field === 'dataMatters' ? ((await yesOrNo(question)) ?? '') : await ask(question);
          if (answer !== '') fields[field] = answer;
        },
    );
  const askObserved = Object.keys(profile.observations ?? {})
    .filter((name) => !Object.hasOwn(known.observed, name))
    .map(
      (name, at): Step =>
        async () => {
          if (at === 0) world.say(form.observations);
          const answer = await yesOrNo(`  ${askedAs(profile, name)}`);
          if (answer !== null) observed[name] = answer;
        },
    );
  const askPhotos: Step = async () => {
    for (let file = await ask(form.photo); file !== ''; file = await ask(form.photo)) {
      try {
        photos.push(world.attach(file));
      } catch (error) {
        if (!(error instanceof FileError)) throw error;
        world.say(error.message);
      }
    }
  };
  world.say(form.title);
  try {
    await takeSteps([...askFields, ...askObserved, askPhotos]);
  } catch (error) {
    if (!(error instanceof Enough)) throw error;
  }
  return { fields: fields as IntakeFields, photos, observed };
};

const takeSteps = async (steps: readonly Step[]): Promise<void> => {
  for (let at = 0; at < steps.length; ) {
    try {
      await steps[at]?.();
      at += 1;
    } catch (error) {
      if (!(error instanceof Back)) throw error;
      at = Math.max(0, at - 1);
    }
  }
};
