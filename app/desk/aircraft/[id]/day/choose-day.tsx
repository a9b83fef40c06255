import { Button } from '@/app/_ui/button';
import styles from './day.module.css';

/** Any other day, without a script: the address carries it. */
export function ChooseDay({ here, on }: { here: string; on: string }) {
  return (
    <form action={here} method="get" className={styles.choose}>
      <label htmlFor="on">Another day</label>
      <input id="on" name="on" type="date" defaultValue={on} key={on} required />
      <Button type="submit">Show</Button>
    </form>
  );
}
