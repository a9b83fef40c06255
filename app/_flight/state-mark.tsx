import { useWords } from '#words';
import { said } from '@/lib/words/said';
import { type ReleaseState, type ReleaseStateName } from '@/lib/rules/release-state';
import { Tag, type Shape, type Size, type Tone } from '../_ui/tag';

/** States of a release in a word or two. */
export const STATE_WORDS: Record<ReleaseStateName, string> = {
  released: said('Released'),
  accepted: said('Accepted by the pilot'),
  airborne: said('Airborne'),
  landed: said('Landed'),
  closed: said('Closed'),
  void: said('VOID'),
  withdrawn: said('Withdrawn'),
};

/** Green stays with the answer: that a flight is under way says nothing about the aircraft. */
const LOOKS: Record<ReleaseStateName, { tone: Tone; shape: Shape }> = {
  released: { tone: 'blue', shape: 'ring' },
  accepted: { tone: 'blue', shape: 'tick' },
  airborne: { tone: 'blue', shape: 'up' },
  landed: { tone: 'blue', shape: 'down' },
  closed: { tone: 'grey', shape: 'dot' },
  void: { tone: 'red', shape: 'cross' },
  withdrawn: { tone: 'grey', shape: 'dashes' },
};

/** What has become of a release; a second mark where its facts changed and it was not void. */
export function StateMark({ state, size }: { state: ReleaseState; size?: Size }) {
  const t = useWords();
  return (
    <>
      <Tag {...LOOKS[state.name]} size={size}>
        {t(STATE_WORDS[state.name])}
      </Tag>
      {state.warned && (
        <>
          {' '}
          <Tag tone="amber" size={size}>
            {t('Warned')}
          </Tag>
        </>
      )}
    </>
  );
}
