import { run } from './run.ts';
import { processTerminal } from './terminal.ts';

const terminal = processTerminal();
try {
  process.exitCode = await run(process.argv.slice(2), new Date(), terminal);
} catch (error) {
  terminal.printError(
    'Something went wrong inside Jarleaf; the workbook was left as it was. Please report what follows.',
  );
  terminal.printError(error instanceof Error ? (error.stack ?? error.message) : String(error));
  process.exitCode = 2;
}
