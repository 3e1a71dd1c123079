// The questions of intake at the keyboard, one line each: what is known already is not asked, nothing must be
// answered, and a dash leaves out the rest.
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
  world.say(form.title);
  try {
    for (const field of Object.keys(form.ask) as IntakeField[]) {
      if (known.fields[field] !== undefined) continue;
      const question = form.ask[field];
      const answer =
        field === 'dataMatters' ? ((await yesOrNo(question)) ?? '') : await ask(question);
      if (answer !== '') fields[field] = answer;
    }
    const open = Object.keys(profile.observations ?? {}).filter(
      (name) => !Object.hasOwn(known.observed, name),
    );
    if (open.length > 0) world.say(form.observations);
    for (const name of open) {
      const answer = await yesOrNo(`  ${askedAs(profile, name)}`);
      if (answer !== null) observed[name] = answer;
    }
    for (let file = await ask(form.photo); file !== ''; file = await ask(form.photo)) {
      try {
        photos.push(world.attach(file));
      } catch (error) {
        if (!(error instanceof FileError)) throw error;
        world.say(error.message);
      }
    }
  } catch (error) {
    if (!(error instanceof Enough)) throw error;
  }
  return { fields: fields as IntakeFields, photos, observed };
};
