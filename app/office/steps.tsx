import { useWords } from '#words';
import { LinkButton } from '@/app/_ui/button';
import { Tag, type Shape, type Tone } from '@/app/_ui/tag';
import { said } from '@/lib/words/said';
import { type StepView } from '@/lib/set-up/read-set-up';
import { type SetUpFacts, type StepId, type StepState } from '@/lib/set-up/steps';
import { CallStep } from './call-step';
import styles from './office.module.css';
import { STEP_WORDS } from './step-words';

const STATES: Record<StepState, { words: string; tone: Tone; shape: Shape }> = {
  'not-started': { words: said('Not started'), tone: 'grey', shape: 'dashes' },
  begun: { words: said('Begun'), tone: 'blue', shape: 'ring' },
  done: { words: said('Done'), tone: 'green', shape: 'tick' },
};

/** The steps in their order. The first that is not done is the one to go on with, and its link stands out. */
export function Steps({ steps, facts }: { steps: readonly StepView[]; facts: SetUpFacts }) {
  const next = steps.find(({ state }) => state !== 'done');
  return (
    <ol className={styles.steps}>
      {steps.map((view) => (
        <Step key={view.step} view={view} facts={facts} isNext={view === next} />
      ))}
    </ol>
  );
}

function Step({ view, facts, isNext }: { view: StepView; facts: SetUpFacts; isNext: boolean }) {
  const t = useWords();
  const { title, lead, href, link, call } = STEP_WORDS[view.step];
  const { words, tone, shape } = STATES[view.state];
  const isCalled = view.mark?.done === true;
  return (
    <li className={styles.step} aria-current={isNext ? 'step' : undefined}>
      <div className={styles.what}>
        <h3>{t(title)}</h3>
        <Tag tone={tone} shape={shape} size="small">
          {t(words)}
        </Tag>
        <span className={styles.soft}>{soFar(view.step, facts, t)}</span>
      </div>
      <p className={styles.lead}>{t(lead)}</p>
      {isCalled && view.mark && (
        <p className={styles.soft}>{t('Called done by {name}.', { name: view.mark.by })}</p>
      )}
      <div className={styles.acts}>
        <LinkButton href={href} weight={isNext ? 'main' : 'plain'}>
          {t(link)}
        </LinkButton>
        {call && view.state !== 'done' && <CallStep step={view.step} done words={t(call)} name={t(title)} />}
        {call && isCalled && (
          <CallStep
            step={view.step}
            done={false}
            words={t('Not done after all')}
            name={t(title)}
            weight="quiet"
          />
        )}
      </div>
    </li>
  );
}

/** How much is there, in a word. */
function soFar(step: StepId, facts: SetUpFacts, t: ReturnType<typeof useWords>): string {
  switch (step) {
    case 'bases':
      return facts.basesUnsaid > 0
        ? t('{n, plural, one {# base} other {# bases}} without its airspace', { n: facts.basesUnsaid })
        : t('{n, plural, one {# base} other {# bases}}', { n: facts.bases });
    case 'people':
      return t('{n, plural, one {# person} other {# people}}', { n: facts.people });
    case 'types':
      return t('{n, plural, one {# type} other {# types}}', { n: facts.types });
    case 'aircraft':
      return t('{n, plural, one {# aircraft} other {# aircraft}}', { n: facts.aircraft });
    case 'equipment':
      return t('{n} of {all} with an equipment list', {
        n: facts.aircraftWithEquipment,
        all: facts.aircraft,
      });
    case 'papers':
      return t('{n, plural, one {# paper or inspection} other {# papers and inspections}}', {
        n: facts.papersAndInspections,
      });
    case 'walkaround':
      return t('{n} of {all} types with a list of its own', {
        n: facts.typesWithOwnList,
        all: facts.typesInUse,
      });
    case 'house-rules':
      return t('{n, plural, one {# rule} other {# rules}}', { n: facts.houseRules });
  }
}
