import { operatorsWithLettersDue } from '../db/letters-due';
import { log } from '../log';
import { letterSender, setLetterSender, type LetterSender } from './letter-signal';
import type { Post } from './letters';
import { sendDueLetters } from './send-letters';

const LOOK_EVERY_MS = 20_000;

/** Given by tests; the running server leaves them out. */
interface LoopOptions {
  readonly lookEveryMs?: number;
  readonly clock?: () => Date;
}

/**
 * Sends letters while the server runs: at once for an operator it is woken for, and otherwise when it looks, every twenty
 * seconds. One letter at a time. Trouble is logged and never thrown. A sender that runs already is given back.
 */
export function startLetterLoop(post: Post, options: LoopOptions = {}): LetterSender {
  const { lookEveryMs = LOOK_EVERY_MS, clock = () => new Date() } = options;
  const running = letterSender();
  if (running) return running;
  const due = new Set<string>();
  let stopped = false;
  let working: Promise<void> | null = null;

  async function workThrough(): Promise<void> {
    for (const operatorId of due) {
      if (stopped) return;
      // Taken off first: who is woken during the round is looked at again.
      due.delete(operatorId);
      await sendDueLetters(operatorId, post, { clock, stopping: () => stopped }).catch(logTrouble);
    }
  }

  function work(): void {
    if (stopped || working) return;
    working = workThrough().finally(() => {
      working = null;
      if (due.size > 0) work();
    });
  }

  async function look(): Promise<void> {
    try {
      for (const operatorId of await operatorsWithLettersDue(clock())) due.add(operatorId);
    } catch (error) {
      logTrouble(error);
    }
    work();
  }

  const timer = setInterval(() => void look(), lookEveryMs);
  // Letters keep no process alive.
  timer.unref();
  void look();

  const sender: LetterSender = {
    wake(operatorId) {
      due.add(operatorId);
      work();
    },
    async stop() {
      stopped = true;
      clearInterval(timer);
      if (letterSender() === sender) setLetterSender(undefined);
      await working;
    },
  };
  setLetterSender(sender);
  return sender;
}

function logTrouble(error: unknown): void {
  log.error('not sent', error, { about: 'letters' });
}
