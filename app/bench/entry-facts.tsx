import { useWords } from '#words';
import { type Translate } from '@/lib/words/translate';
import { type ReactNode } from 'react';
import { jascLabel } from '@/lib/rules/jasc';
import { type CiteId } from '@/lib/rules/law';
import { partInWords } from '@/lib/work/parts';
import { testInWords } from '@/lib/work/tests-owed';
import { type WorkView } from '@/lib/work/work-view';
import { Cite } from '../_ui/cite';
import { DateText, HoursText } from '../_ui/moment';
import styles from './entry-facts.module.css';
import { certificateWords, outcomeWords, partWords, workKindWords } from './words';

type Entry = WorkView['entry'];
/** A part of the entry: its name, what stands there, and the paragraph that asks for it. */
type Row = readonly [name: string, value: ReactNode, cite?: CiteId];

/**
 * The entry exactly as it is, or will be, signed, part by part with its paragraph; what is not given is said. `items`:
 * tasks of Appendix A(c). `signedBy`: the signature of an entry already signed.
 */
export function EntryFacts(props: {
  entry: Entry;
  items: readonly { value: string; label: string }[];
  signedBy?: WorkView['signOff'];
}) {
  const t = useWords();
  const { entry, items, signedBy } = props;
  const item = items.find((one) => one.value === String(entry.preventiveItem));
  const rows: readonly Row[] = [
    ['Aircraft', t('{aircraft}, serial {serial}', { aircraft: entry.aircraft, serial: entry.serial })],
    ['Write-up', entry.writeUp],
    ['Work', entry.title],
    ['System', jascLabel(entry.jasc)],
    ['Part', partWords(t, entry.part)],
    [t('Kind of work'), workKindWords(t, entry.workKind)],
    ...given(
      t('Appendix A(c)'),
      entry.preventiveItem !== null &&
        (item?.label ?? t('item {preventiveItem}', { preventiveItem: entry.preventiveItem })),
    ),
    [t('Unit only exchanged'), entry.swapOnly ? 'Yes' : 'No'],
    ...given(t('What came of it'), entry.outcome && outcomeWords(t, entry.outcome)),
    ...given(t('How it was looked for'), entry.details?.lookedFor),
    [t('What was done'), entry.description, '14cfr43.9(a)(1)'],
    [t('By which data'), entry.references, '14cfr43.9(a)(1)'],
    [t('Completed on'), entry.completedOn && <DateText date={entry.completedOn} />, '14cfr43.9(a)(2)'],
    [t('Done by'), entry.performedBy, '14cfr43.9(a)(3)'],
    ...given(t('How they could do it'), supervisionSaid(t, entry), '14cfr43.3(d)'),
    ['Parts', <Parts key="parts" entry={entry} />],
    ...given(
      t('Hours of work'),
      entry.laborTenths !== undefined && <HoursText key="labor" tenths={entry.laborTenths} />,
    ),
    [t('Total time in service'), <HoursText key="time" tenths={entry.ttisTenths} />],
    ...given(t('Major or minor'), majorSaid(t, entry), '14cfr43appA(b)'),
    ...majorPapers(t, entry),
    ...given(t('Tests owed'), entry.testsOwed?.map(testInWords).join(', ')),
    [t('Check flight owed'), checkFlightSaid(t, entry), '14cfr91.407(b)'],
    ...given('Corrects', entry.corrects?.why),
    ...given(t('Test after'), entry.testFor?.title),
    ...given(
      'Signed',
      signedBy &&
        `${signedBy.by}, ${certificateWords(t, signedBy.certificateKind)} ${signedBy.certificateNumber}`,
      '14cfr43.9(a)(4)',
    ),
  ];
  return (
    <dl className={styles.entry}>
      {rows.map(([name, value, cite]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>
            {value || <span className={styles.none}>{t('Not given')}</span>}
            {cite && <Cite cite={cite} />}
          </dd>
        </div>
      ))}
    </dl>
  );
}

/** A row that is there only where something was said. */
const given = (name: string, value: ReactNode, cite?: CiteId): readonly Row[] =>
  value ? [[name, value, cite]] : [];

function Parts({ entry: { parts, partsUsed } }: { entry: Entry }) {
  const t = useWords();
  if (!parts && !partsUsed) return <span className={styles.none}>{t('None')}</span>;
  return (
    <>
      {parts?.map((part, index) => (
        <span key={index} className={styles.part}>
          {partInWords(part)}
        </span>
      ))}
      {partsUsed && <span className={styles.part}>{partsUsed}</span>}
    </>
  );
}

const supervisionSaid = (t: Translate, { supervised }: Entry): string | null =>
  supervised === undefined
    ? null
    : supervised
      ? t('Supervised by the signer, who was at hand in person')
      : t('Certificated for it, by the signer’s word');

function majorSaid(t: Translate, { majorAnswers }: Entry): string | null {
  if (!majorAnswers) return null;
  const answers = Object.values(majorAnswers);
  const yes = answers.filter(Boolean).length;
  return yes === 0
    ? t('None of the {answers} things that make a repair major was done', { answers: answers.length })
    : t('{yes} of the {answers} things that make a repair major: it is major', {
        yes,
        answers: answers.length,
      });
}

const majorPapers = (
  t: Translate,
  { form337, approvedData, limitsChanged, limitsRevised, details }: Entry,
): readonly Row[] => [
  ...given(
    details?.majorRecord === 'work-order' ? t('Work order') : t('Form 337'),
    form337,
    details?.majorRecord === 'work-order' ? '14cfr43appB(b)' : '14cfr43.9(d)',
  ),
  ...given(t('Approved data'), approvedData, '14cfr65.95(a)(1)'),
  ...given(
    t('Flight manual'),
    limitsChanged === undefined
      ? null
      : limitsChanged
        ? t('Revised: {limitsRevised}', { limitsRevised: limitsRevised ?? '' })
        : t('Not changed'),
    '14cfr43.5(c)',
  ),
  ...given(
    t('Fuel tank in the cabin'),
    details?.cabinTank &&
      (details.copyAboard ? t('Copy of Form 337 aboard') : t('Copy of Form 337 not aboard')),
    '14cfr43appB(d)',
  ),
];

function checkFlightSaid(t: Translate, { checkFlightNeeded, checkFlightReason }: Entry): string | null {
  if (checkFlightNeeded === null) return null;
  return `${checkFlightNeeded ? t('Yes') : t('No')}: ${checkFlightReason ?? ''}`;
}
