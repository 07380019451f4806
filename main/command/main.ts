import type { Parsed } from './arguments.ts';
import { EXIT } from './job.ts';
import { runJob } from './run-job.ts';

/** Body of every headless command: parse, run, exit with the agreed code. */
export async function main(parse: (words: readonly string[]) => Parsed): Promise<void> {
  const parsed = parse(process.argv.slice(2));
  if ('wrong' in parsed) {
    process.stderr.write(`${parsed.wrong}\n`);
    process.exit(EXIT.unusable);
  }
  process.exit(await runJob(parsed.job).catch((error: unknown) => {
    process.stderr.write(`Strandbook itself failed: ${error instanceof Error ? error.message : error}\n`);
    return EXIT.failed;
  }));
}
