import { runToEnd } from './children.mjs';
import { Trouble, say } from './say.mjs';

/** The tests read papers back with these, which know nothing of the library that wrote them (package poppler-utils). */
const TOOLS = ['pdftotext', 'pdfinfo', 'pdftocairo'];

/** Makes sure that the tools are there: on the path, or installed when this is root on a Debian. Throws with advice else. */
export async function findPdfReader(): Promise<void> {
  if (await present()) return;
  if (process.getuid?.() === 0 && (await starts('apt-get', ['--version']))) {
    say('No pdftotext found; asking the system (apt-get install poppler-utils) ...');
    await runToEnd('apt-get', ['update']);
    await runToEnd('apt-get', ['install', '-y', '--no-install-recommends', 'poppler-utils'], {
      env: { DEBIAN_FRONTEND: 'noninteractive' },
    });
    if (await present()) return;
  }
  throw new Trouble(
    'The tests of papers need pdftotext, pdfinfo and pdftocairo, and they could not be found or installed. Install the ' +
      'package poppler-utils of your system (on a Mac: brew install poppler).',
  );
}

async function present(): Promise<boolean> {
  for (const tool of TOOLS) if (!(await starts(tool, ['-v']))) return false;
  return true;
}

/** Only starting it tells: a name on the path may miss its libraries. */
async function starts(tool: string, args: string[]): Promise<boolean> {
  const { code } = await runToEnd(tool, args);
  return code === 0;
}
