import { useWords } from '#words';
import { said } from '@/lib/words/said';
import { type InspectionView } from '@/lib/inspections/read-inspection';
import { RUN_UP_CHECKS } from '@/lib/rules/part-43/43-15-performance';
import { DateText, HoursText } from '../../../_ui/moment';
import { Card, FactList } from '../../../_ui/page';

const ANSWERS = {
  satisfactory: 'satisfactory',
  'not-satisfactory': said('not satisfactory'),
  'no-instrument': said('no instrument shows it'),
  'not-run': said('engine not run'),
} as const;

/** The entry as it stands, whole: what a signature is about. */
export function EntryAsWritten({ view }: { view: InspectionView }) {
  const t = useWords();
  const { entry } = view;
  return (
    <Card>
      <FactList
        facts={[
          { name: t('Extent'), value: entry.extent ?? t('Not given') },
          { name: t('Checklist'), value: entry.checklist ?? t('Not given') },
          {
            name: t('Covers Appendix D'),
            value: entry.performance
              ? entry.performance.checklistCoversAppendixD
                ? t('Yes')
                : t('No')
              : t('Not given'),
          },
          {
            name: t('Made to determine airworthiness'),
            value: entry.performance
              ? entry.performance.madeToDetermineAirworthiness
                ? t('Yes')
                : t('No')
              : t('Not given'),
          },
          {
            name: t('Completed on'),
            value: entry.completedOn ? <DateText date={entry.completedOn} /> : t('Not given'),
          },
          { name: t('Total time in service'), value: <HoursText tenths={entry.ttisTenths} /> },
          ...RUN_UP_CHECKS.map(({ key, name }) => {
            const check = entry.performance?.runUp[key];
            return {
              name,
              value: check
                ? [check.reading, t(ANSWERS[check.answer])].filter(Boolean).join(', ')
                : t('Not given'),
            };
          }),
        ]}
      />
    </Card>
  );
}
