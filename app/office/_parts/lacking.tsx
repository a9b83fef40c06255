import { English, useEnglish, useWords } from '#words';
import { Cite } from '@/app/_ui/cite';
import { ComesBack } from '@/app/_ui/comes-back';
import { LinkButton } from '@/app/_ui/button';
import { EmptyState } from '@/app/_ui/page';
import { ProblemNotice } from '@/app/_ui/problem-notice';
import { Tag } from '@/app/_ui/tag';
import { signedInRef } from '@/app/_session/actor-ref';
import { words } from '@/app/_words/words';
import { readLacking, type LackingOfAircraft } from '@/lib/fleet/read-lacking';
import { kindsInWords } from '@/lib/rules/kinds-in-words';
import { type Lacking as LackingFact } from '@/lib/rules/lacking';
import { OPERATION_KINDS, operationId } from '@/lib/rules/operations';
import { ENTER_AT, enterHref } from './enter-at';
import styles from './lacking.module.css';

/** What the answer engine still lacks: of one aircraft, or of the whole fleet. For the pages of the office. */
export async function Lacking({ aircraftId }: { aircraftId?: string }) {
  const t = await words();
  const result = await readLacking(await signedInRef(), { aircraftId: aircraftId ?? null });
  if (!result.ok) {
    return (
      <>
        {result.problem.code === 'try_again' && <ComesBack />}
        <ProblemNotice problem={result.problem} />
      </>
    );
  }
  return (
    <section aria-label={t('What the engine still lacks')} className={styles.all}>
      <h2>{t('What the engine still lacks')}</h2>
      <LackingShown aircraft={result.value.aircraft} one={aircraftId !== undefined} />
    </section>
  );
}

/** The same, of what was read already. `one`: of a single aircraft, all of it in sight. */
export function LackingShown({
  aircraft,
  one = false,
}: {
  aircraft: readonly LackingOfAircraft[];
  one?: boolean;
}) {
  const t = useWords();
  if (aircraft.length === 0) {
    return (
      <EmptyState title={t('There is no aircraft yet.')}>
        <p>{t('As soon as one is entered, this says what is still missing before it can be go.')}</p>
      </EmptyState>
    );
  }
  const asked = aircraft.filter(({ lacking }) => lacking.length > 0);
  if (asked.length === 0) {
    return (
      <div className={styles.nothing}>
        <Tag tone="green">{t('Complete')}</Tag>
        <p>
          <b>{t('The engine asks for nothing more.')}</b>{' '}
          {t('An answer can still be no go, for what is known.')}
        </p>
      </div>
    );
  }
  if (one) return asked.map((of) => <Groups key={of.aircraftId} of={of} />);
  return aircraft.map((of) => (
    <details key={of.aircraftId} className={styles.aircraft} open={of === asked[0]}>
      <summary>
        <span className={styles.registration}>{of.registration}</span>{' '}
        <span className={styles.soft}>{of.typeName}</span>{' '}
        {of.lacking.length === 0 ? (
          <Tag tone="green" size="small">
            {t('Complete')}
          </Tag>
        ) : (
          <Tag tone="grey" size="small">
            {t('{n, plural, one {# fact missing} other {# facts missing}}', { n: of.lacking.length })}
          </Tag>
        )}
      </summary>
      <Groups of={of} />
    </details>
  ));
}

function Groups({ of }: { of: LackingOfAircraft }) {
  const t = useWords();
  const places = [...new Set(of.lacking.map(({ enterAt }) => enterAt))];
  return places.map((place) => {
    const { title, enter, hint } = ENTER_AT[place];
    return (
      <div key={place} className={styles.group}>
        <div className={styles.head}>
          <h3>{t(title)}</h3>
          <LinkButton href={enterHref(place, of)}>{t(enter)}</LinkButton>
        </div>
        {hint && <p className={styles.soft}>{t(hint)}</p>}
        <ul className={styles.facts}>
          {of.lacking
            .filter(({ enterAt }) => enterAt === place)
            .map((fact) => (
              <Fact key={`${fact.missing} ${fact.about?.id ?? ''}`} fact={fact} />
            ))}
        </ul>
      </div>
    );
  });
}

/** The engine's own words stay English (docs/languages.md). */
function Fact({ fact }: { fact: LackingFact }) {
  const t = useWords();
  const english = useEnglish();
  const kinds = kindsInWords(OPERATION_KINDS.filter((kind) => fact.kinds.includes(operationId(kind))));
  return (
    <li>
      <p {...english} className={styles.because}>
        <English>{fact.because}</English>
      </p>
      <p className={styles.soft}>
        {t('No go until then')}: <span {...english}>{kinds.join(', ')}</span>
      </p>
      <div className={styles.cites} {...english}>
        {fact.cites.map((cite) => (
          <Cite key={cite} cite={cite} />
        ))}
      </div>
    </li>
  );
}
