import { existsSync } from 'node:fs';
import path from 'node:path';
import { chromium } from '@playwright/test';
import { runToEnd } from './children.mjs';
import { inRepository } from './places.mjs';
import { Trouble, say } from './say.mjs';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome'];
const DOWNLOAD_PATIENCE_MS = 240_000;

/**
 * A Chromium that really starts. Gives its path, or undefined when Playwright's own is there (it then needs no path).
 * Looks at WHEELCHOCK_CHROMIUM, Playwright's own, the machine's; then tries to get one.
 */
export async function findBrowser(): Promise<string | undefined> {
  const present = await presentBrowser();
  if (present !== 'none') {
    return present;
  }
  say('No Chromium found; asking Playwright to fetch one ...');
  const cli = inRepository('node_modules', '@playwright', 'test', 'cli.js');
  await runToEnd(process.execPath, [cli, 'install', 'chromium'], { timeoutMs: DOWNLOAD_PATIENCE_MS });
  const fetched = await presentBrowser();
  if (fetched !== 'none') {
    return fetched;
  }
  if (process.getuid?.() === 0 && onPath('apt-get').length > 0) {
    say('Playwright could not; asking the system (apt-get install chromium) ...');
    await runToEnd('apt-get', ['update']);
    await runToEnd('apt-get', ['install', '-y', '--no-install-recommends', 'chromium'], {
      env: { DEBIAN_FRONTEND: 'noninteractive' },
    });
    const installed = await presentBrowser();
    if (installed !== 'none') {
      return installed;
    }
  }
  throw new Trouble(
    'The journeys need a Chromium and none could be found or installed. Install the package chromium of your system, or ' +
      'run: npx playwright install --with-deps chromium, or set WHEELCHOCK_CHROMIUM to the path of one.',
  );
}

async function presentBrowser(): Promise<string | undefined | 'none'> {
  const wished = process.env['WHEELCHOCK_CHROMIUM'];
  if (wished) {
    if (await launches(wished)) {
      return wished;
    }
    throw new Trouble(`WHEELCHOCK_CHROMIUM=${wished} does not start.`);
  }
  if (await launches(undefined)) {
    return undefined;
  }
  for (const candidate of [...NAMES.flatMap(onPath), '/Applications/Chromium.app/Contents/MacOS/Chromium']) {
    if (existsSync(candidate) && (await launches(candidate))) {
      return candidate;
    }
  }
  return 'none';
}

/** Only starting it tells: a path that is reported may hold nothing, and a program may miss its libraries. */
async function launches(executablePath: string | undefined): Promise<boolean> {
  try {
    const browser = await chromium.launch({
      ...(executablePath === undefined ? {} : { executablePath }),
      args: ['--no-sandbox', '--disable-gpu'],
      timeout: 30_000,
    });
    await browser.close();
    return true;
  } catch {
    return false;
  }
}

function onPath(name: string): string[] {
  const folders = (process.env['PATH'] ?? '').split(path.delimiter);
  return folders.map((folder) => path.join(folder, name)).filter((file) => existsSync(file));
}
