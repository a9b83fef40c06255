import { type WorkView } from '@/lib/determinations/read-write-up';
import { jascLabel } from '@/lib/rules/jasc';
import { DateText, HoursText } from '../_ui/moment';
import styles from './entry-facts.module.css';
import { partWords, workKindWords } from './words';

/** The entry exactly as it is, or will be, signed; what is not given is said. `items`: tasks of Appendix A(c). */
export function EntryFacts(props: {
  entry: WorkView['entry'];
  items: readonly { value: string; label: string }[];
}) {
  const { entry, items } = props;
  const item = items.find((one) => one.value === String(entry.preventiveItem));
  const rows: readonly (readonly [string, React.ReactNode])[] = [
    ['Aircraft', `${entry.aircraft}, serial ${entry.serial}`],
    ['Write-up', entry.writeUp],
    ['Work', entry.title],
    ['System', jascLabel(entry.jasc)],
    ['Part', partWords(entry.part)],
    ['Kind of work', workKindWords(entry.workKind)],
    ...(entry.preventiveItem === null
      ? []
      : ([['Appendix A(c)', item?.label ?? `item ${entry.preventiveItem}`]] as const)),
    ['Unit only exchanged', entry.swapOnly ? 'Yes' : 'No'],
    ['What was done', entry.description],
    ['By which data', entry.references],
    ['Parts', entry.partsUsed],
    ['Completed on', entry.completedOn && <DateText date={entry.completedOn} />],
    ['Done by', entry.performedBy],
    ['Total time in service', <HoursText key="time" tenths={entry.ttisTenths} />],
    ['Check flight owed', checkFlightSaid(entry)],
  ];
  return (
    <dl className={styles.entry}>
      {rows.map(([name, value]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{value || <span className={styles.none}>Not given</span>}</dd>
        </div>
      ))}
    </dl>
  );
}

function checkFlightSaid({ checkFlightNeeded, checkFlightReason }: WorkView['entry']): string | null {
  if (checkFlightNeeded === null) return null;
  return `${checkFlightNeeded ? 'Yes' : 'No'}: ${checkFlightReason ?? ''}`;
}
