import { useWords } from '#words';
import { Button } from '@/app/_ui/button';
import styles from './day.module.css';

/** Any other day, without a script: the address carries it. */
export function ChooseDay({ here, on }: { here: string; on: string }) {
  const t = useWords();
  return (
    <form action={here} method="get" className={styles.choose}>
      <label htmlFor="on">{t('Another day')}</label>
      <input id="on" name="on" type="date" defaultValue={on} key={on} required />
      <Button type="submit">{t('Show')}</Button>
    </form>
  );
}
