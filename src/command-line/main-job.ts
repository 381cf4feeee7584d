import { copyFile, mkdir } from 'node:fs/promises';
import { run } from './run.ts';
import { heading, processTerminal } from './terminal.ts';

/**
 * The main job on a copy of the sample studio: what is there and needs attention, what the log has not drawn yet,
 * and what a booked job costs. The sample itself stays as it is.
 */
const SAMPLE = 'sample-workbooks/demo-studio.xlsx';
const FOLDER = 'out';
const COPY = `${FOLDER}/demo-studio.xlsx`;
const DAY = '2026-11-16';
const JOB = 'J-2031';

const terminal = processTerminal();
await mkdir(FOLDER, { recursive: true });
await copyFile(SAMPLE, COPY);
terminal.print(`Copied ${SAMPLE} to ${COPY}; what follows is done to the copy, as on ${DAY}.`);

const calls = [
  ['check', COPY, '--on', DAY],
  ['draw', COPY, '--on', DAY],
  ['quote', COPY, '--job', JOB, '--on', DAY],
];
for (const words of calls) {
  terminal.print('');
  terminal.print(heading(`$ npm run --silent jarleaf -- ${words.join(' ')}`, terminal));
  // oxlint-disable-next-line no-await-in-loop -- each call works on what the one before saved
  const code = await run(words, new Date(), terminal);
  if (code === 2) process.exitCode = 2;
}
terminal.print('');
terminal.print(`Open ${COPY} in a spreadsheet program to see what was written, or try another verb on it:`);
terminal.print('npm run --silent jarleaf -- help');
