import { type CountedTogether } from '@/lib/rules/part-91/91-213-judgements';
import { Checkbox } from '../../_ui/fields';

/** 91.213(d)(4) for the combination: shown only where something else is out or limited, each by its name. */
export function TogetherCheck({ together }: { readonly together: readonly CountedTogether[] }) {
  if (together.length === 0) return null;
  return (
    <Checkbox
      name="together"
      label={
        <>
          I determine that it constitutes none together with what else is out or limited now:{' '}
          {together.map(({ number, title, why }) => `${number} ${title} (${why})`).join('; ')}.
        </>
      }
    />
  );
}
