import { log } from '../log';

/**
 * The framework and libraries write errors to the console themselves, whole, with whatever a message quotes. From now on
 * those go the log's way: an error by kind, scrubbed words and places; a text by its scrubbed words.
 */
export function takeOverConsole(): void {
  const take =
    (level: 'error' | 'warn') =>
    (...given: unknown[]) => {
      const error = given.find((one) => one instanceof Error) ?? new Text(given);
      if (level === 'error' && !isNodesWarning(given)) log.error('framework', error);
      else log.warn('framework', {}, error);
    };
  console.error = take('error');
  console.warn = take('warn');
}

/** Node writes its warnings (what a library uses will go one day) where errors go, at every start; nobody has to look today. */
const isNodesWarning = ([first]: readonly unknown[]): boolean =>
  typeof first === 'string' && /^\(node:\d+\) (?:\[\w+\] )?\w*Warning: /.test(first);

/** What was written without an error; objects are left out, since they may hold anything. */
class Text extends Error {
  override readonly name = 'Text';
  constructor(given: readonly unknown[]) {
    super(given.filter((one) => typeof one === 'string').join(' '));
    delete this.stack;
  }
}
