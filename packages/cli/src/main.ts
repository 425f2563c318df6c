#!/usr/bin/env node
import { Command } from 'commander';
import { feed } from './feed.js';

const program = new Command('loomwright')
  .description('Electrical calculations for people who wire a vehicle themselves.')
  .version('0.1.0')
  .showHelpAfterError();

program
  .command('feed')
  .description('size the wire and the fuse of one circuit from a file (YAML or JSON)')
  .argument('<file>', 'the circuit file')
  .option('--json', 'print the answer as data, unrounded')
  .option('--working', 'show every step of the calculation')
  .addHelpText('after', '\nExit status: 0 every limit met, 1 bad input, 2 not possible.')
  .action((file: string, options: { json?: boolean; working?: boolean }) => {
    const { out, err, status } = feed(file, options);
    process.stdout.write(out);
    process.stderr.write(err);
    process.exitCode = status;
  });

program.exitOverride((error) => process.exit(error.exitCode === 0 ? 0 : 1));
program.parse();
