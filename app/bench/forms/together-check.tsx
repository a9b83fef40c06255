import { English } from '#words';
import { type CountedTogether } from '@/lib/rules/part-91/91-213-judgements';
import { Checkbox } from '../../_ui/fields';

/**
 * 91.213(d)(4) for the combination: shown only where something else is out or limited, each by its name. Part of what is signed, so
 * it is said in the language it is kept in.
 */
export function TogetherCheck({ together }: { readonly together: readonly CountedTogether[] }) {
  if (together.length === 0) return null;
  const named = together.map(({ number, title, why }) => `${number} ${title} (${why})`).join('; ');
  const statement = `I determine that it constitutes none together with what else is out or limited now: ${named}.`;
  return <Checkbox name="together" label={<English>{statement}</English>} />;
}
