import { whenClosing } from '../shutdown';
import { letterSettings } from './letter-settings';
import { startLetterLoop } from './letter-loop';
import { openPost } from './letters';

/**
 * Starts sending letters for as long as this server runs, where the settings say so. Throws in plain words when they are
 * half made. Told to end, the server takes no further letter; one it had under way is sent again by whoever runs next.
 */
export function startLetters(): void {
  const settings = letterSettings();
  if (!settings) return;
  const sender = startLetterLoop(openPost(settings));
  whenClosing(() => sender.stop());
}
