#!/usr/bin/env node
import { Command } from 'commander';
import { diagnoseFile } from './diagnose.js';
import { feed, type Outcome } from './feed.js';
import { plan } from './plan.js';
import { writeSheets } from './sheets.js';

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
    finish(feed(file, options));
  });

program
  .command('plan')
  .description('plan a whole vehicle from its loom file: findings, and every wire with what decided its size')
  .argument('<file>', 'the loom file')
  .option('--json', 'print the plan as data, unrounded')
  .addHelpText('after', '\nExit status: 0 every limit met, 1 bad input, 2 a limit is not met.')
  .action((file: string, options: { json?: boolean }) => {
    finish(plan(file, options));
  });

program
  .command('sheets')
  .description('write the sheets of a vehicle: wire list, fuse chart, cut list, loads, readings, drawings')
  .argument('<file>', 'the loom file')
  .requiredOption('--out <dir>', 'the folder to make')
  .option('--force', 'replace sheets that are there')
  .option('--date <text>', 'the date at the head of each sheet, as you write it; a blank to fill in unless given')
  .addHelpText(
    'after',
    '\nExit status: 0 every limit met, 1 bad input, 2 a limit is not met (the sheets are written and say so).',
  )
  .action((file: string, options: { out: string; force?: boolean; date?: string }) => {
    finish(writeSheets(file, options));
  });

program
  .command('diagnose')
  .description('which joint or part is bad, from a file of meter readings on a planned vehicle')
  .argument('<file>', 'the loom file')
  .argument('<readings>', 'the file of readings (YAML or JSON)')
  .option('--json', 'print the answer as data, unrounded')
  .addHelpText('after', '\nExit status: 0 nothing found, 1 bad input, 2 something was found.')
  .action((file: string, readings: string, options: { json?: boolean }) => {
    finish(diagnoseFile(file, readings, options));
  });

function finish({ out, err, status }: Outcome): void {
  process.stdout.write(out);
  process.stderr.write(err);
  process.exitCode = status;
}

program.exitOverride((error) => process.exit(error.exitCode === 0 ? 0 : 1));
program.parse();
