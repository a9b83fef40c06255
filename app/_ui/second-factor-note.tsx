import { useWords } from '#words';
import { type WhoAmI } from '@/lib/people/who-am-i';
import styles from './second-factor-note.module.css';

/**
 * On every screen of somebody who signs here and was let in without the second factor that is asked for: told before a
 * form is filled in, and not by its refusal.
 */
export function SecondFactorNote({ lacks }: { lacks: NonNullable<WhoAmI['secondFactor']> }) {
  const t = useWords();
  return (
    <p className={`${styles.note} not-on-paper`}>
      {lacks === 'missing'
        ? t('To sign anything here you need a second factor beside your password.')
        : t('You are signed in without your second factor, and cannot sign anything.')}{' '}
      <a href="/account#second-factor">{lacks === 'missing' ? t('Set it up') : t('How to go on')}</a>
    </p>
  );
}
