// `share`: between this bench and its shop: a library to fetch from, an address to deliver to.
import { Command } from 'commander';
import { deliverCommand, outboxCommand } from './share/deliver.js';
import { fetchCommand } from './share/fetch.js';
import { indexCommand } from './share/index-folder.js';
import { redactCommand } from './share/redact.js';

export const shareCommand = (): Command =>
  new Command('share')
    .description("fetch from a shop's library, and deliver sessions and reports to the shop")
    .addCommand(fetchCommand())
    .addCommand(deliverCommand())
    .addCommand(outboxCommand())
    .addCommand(redactCommand())
    .addCommand(indexCommand());
