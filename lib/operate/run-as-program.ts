import { pathToFileURL } from 'node:url';
import { explain } from './say.mjs';

/**
 * Runs `command` when the file it stands in (`import.meta.url`) is the program that was started, and ends with the code it gives.
 * What fails is said in plain words, and ends with 1.
 */
export function runAsProgram(fileUrl: string, command: () => Promise<number>): void {
  if (fileUrl !== pathToFileURL(process.argv[1] ?? '').href) return;
  command().then(
    (code) => process.exit(code),
    (error: unknown) => {
      console.error(explain(error));
      process.exit(1);
    },
  );
}
