/**
 * What the operating scripts say to a person, and the one kind of error they expect.
 * Node builtins only: these words must work before anything is installed.
 */

/** Something that a person can put right. `message` says what happened and what to do; no stack is shown. */
export class Trouble extends Error {
  /**
   * @param {string} message plain words, whole sentences
   * @param {{ cause?: unknown }} [options]
   */
  constructor(message, options) {
    super(message, options);
    this.name = 'Trouble';
  }
}

/** Prints one line of progress. @param {string} line */
export function say(line) {
  process.stdout.write(`${line}\n`);
}

const DISK_FULL =
  'The disk is full. Free some space (about 2 GB are needed for the packages, the build and the database) and try again.';

/**
 * Tells a full disk from the text a program left behind.
 * @param {string} text
 * @returns {boolean}
 */
export function speaksOfFullDisk(text) {
  return /ENOSPC|No space left on device|There is not enough space on the disk/i.test(text);
}

/**
 * Puts a known failure into plain words; anything unknown keeps its stack, because it is a bug.
 * @param {unknown} error
 * @returns {string}
 */
export function explain(error) {
  if (error instanceof Trouble) {
    return error.message;
  }
  const code = /** @type {{ code?: string } | null} */ (error)?.code;
  const text = error instanceof Error ? (error.stack ?? error.message) : String(error);
  if (code === 'ENOSPC' || speaksOfFullDisk(text)) {
    return DISK_FULL;
  }
  if (code === 'EACCES' || code === 'EPERM' || code === 'EROFS') {
    return `This account may not write here.\n${text}`;
  }
  return `Something failed that was not foreseen. Please report it with these lines:\n${text}`;
}

/** The words for a full disk, for scripts that read it in another program's output. */
export function diskFull() {
  return new Trouble(DISK_FULL);
}
