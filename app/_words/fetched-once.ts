import { type Translate } from '@/lib/words/translate';

type Words = Promise<Translate | null>;

const TRY_AGAIN_MS = 5_000;

/**
 * Words that come once, and only to whom they concern. `null`: not to be had just now. The next asking but those of the same
 * moment tries again: a promise made anew with each drawing would never come to an end.
 */
export function fetchedOnce(fetch: () => Promise<{ readonly default: Translate }>): () => Words {
  let asked: Words | null = null;
  return () => {
    asked ??= fetch().then(
      ({ default: t }) => t,
      () => {
        setTimeout(() => (asked = null), TRY_AGAIN_MS);
        return null;
      },
    );
    return asked;
  };
}
