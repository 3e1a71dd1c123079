// `pads`: reply pads, which answer without hands.
import { Command } from 'commander';
import { learnPadsCommand, learnPadsExamples } from './pads-learn.js';
import { planPadsCommand, planPadsExamples } from './pads-plan.js';

export const padsCommand = (): Command =>
  new Command('pads')
    .description('reply pads: resistors on a scrap board that answer without hands')
    .addCommand(planPadsCommand())
    .addCommand(learnPadsCommand())
    .addHelpText('after', `${planPadsExamples}\n${learnPadsExamples.replace('\nExamples:\n', '')}`);
