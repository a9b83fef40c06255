import { useWords } from '#words';
import { said } from '@/lib/words/said';
import { useFormContext } from 'react-hook-form';
import { NOT_THE_SAME, sameAnswer, type HowTheSame } from '@/lib/findings/compose-finding';
import { type PackWriteUp } from '@/lib/walkarounds/pack';
import { FieldError } from '@/app/_ui/fields';
import { Moment } from '@/app/_ui/moment';
import { SeverityOf, StateMark } from '../../_parts/write-up-card';
import { type MayBeThis } from './same-candidates';
import styles from './same-one.module.css';

/**
 * "Is it this one?" Asked in the form itself, under what was chosen: a write-up that is there already gets an observation
 * instead of a twin. Nothing is answered beforehand.
 */
export function SameOne(props: { candidates: readonly MayBeThis[]; zone: string }) {
  const t = useWords();
  const { candidates, zone } = props;
  const { register, formState } = useFormContext();
  if (candidates.length === 0) return null;
  const bound = register('same');
  const error = formState.errors['same']?.message;
  const answer = (value: string, label: string, about: string) => (
    <label className={styles.answer}>
      <input {...bound} type="radio" value={value} aria-describedby={error ? 'same-error' : undefined} />
      <span>
        {label}
        {about && <span className="out-of-sight"> ({about})</span>}
      </span>
    </label>
  );
  return (
    <fieldset className={styles.same} role="radiogroup" aria-invalid={error ? true : undefined}>
      <legend className={styles.question}>
        {candidates.length === 1 ? t('Is it this one?') : t('Is it one of these?')}
      </legend>
      {candidates.map(({ writeUp, because }) => (
        <div key={writeUp.id} className={styles.one}>
          <div className={styles.what}>
            <p className={styles.title}>
              {writeUp.number} {writeUp.title}
            </p>
            <div className={styles.marks}>
              <SeverityOf writeUp={writeUp} />
              <StateMark writeUp={writeUp} />
            </div>
            <p className={styles.soft}>
              {writeUp.place && `${writeUp.place}. `}
              {writeUp.closedAt ? t('Closed') : t('Written up')}{' '}
              <Moment at={writeUp.closedAt ?? writeUp.openedAt} zone={zone} />.
            </p>
            <p className={styles.words}>“{writeUp.words}”</p>
            {because.length > 0 && (
              <details className={styles.why}>
                <summary>{t('Why it may be the same')}</summary>
                <ul>
                  {because.map((say) => (
                    <li key={say}>{say}</li>
                  ))}
                </ul>
              </details>
            )}
          </div>
          <div className={styles.answers}>
            {ANSWERS[writeUp.state].map(({ how, label }) => (
              <div key={how}>{answer(sameAnswer(how, writeUp.id), label, writeUp.number)}</div>
            ))}
          </div>
        </div>
      ))}
      {answer(NOT_THE_SAME, t('No, another'), '')}
      <FieldError id="same-error">{typeof error === 'string' ? error : undefined}</FieldError>
    </fieldset>
  );
}

const STILL_THERE = [
  { how: 'same', label: said('Yes, the same, as written') },
  { how: 'worse', label: said('Yes, but worse') },
] as const;

const ANSWERS: Readonly<
  Record<PackWriteUp['state'], readonly { readonly how: HowTheSame; readonly label: string }[]>
> = {
  open: STILL_THERE,
  deferred: STILL_THERE,
  closed: [{ how: 'back', label: said('It is back') }],
};
