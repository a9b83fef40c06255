import { type InspectionView } from '@/lib/inspections/read-inspection';
import { RUN_UP_CHECKS } from '@/lib/rules/part-43/43-15-performance';
import { DateText, HoursText } from '../../../_ui/moment';
import { Card, FactList } from '../../../_ui/page';

const ANSWERS = {
  satisfactory: 'satisfactory',
  'not-satisfactory': 'not satisfactory',
  'no-instrument': 'no instrument shows it',
  'not-run': 'engine not run',
} as const;

/** The entry as it stands, whole: what a signature is about. */
export function EntryAsWritten({ view }: { view: InspectionView }) {
  const { entry } = view;
  return (
    <Card>
      <FactList
        facts={[
          { name: 'Extent', value: entry.extent ?? 'Not given' },
          { name: 'Checklist', value: entry.checklist ?? 'Not given' },
          {
            name: 'Covers Appendix D',
            value: entry.performance
              ? entry.performance.checklistCoversAppendixD
                ? 'Yes'
                : 'No'
              : 'Not given',
          },
          {
            name: 'Made to determine airworthiness',
            value: entry.performance
              ? entry.performance.madeToDetermineAirworthiness
                ? 'Yes'
                : 'No'
              : 'Not given',
          },
          {
            name: 'Completed on',
            value: entry.completedOn ? <DateText date={entry.completedOn} /> : 'Not given',
          },
          { name: 'Total time in service', value: <HoursText tenths={entry.ttisTenths} /> },
          ...RUN_UP_CHECKS.map(({ key, name }) => {
            const check = entry.performance?.runUp[key];
            return {
              name,
              value: check ? [check.reading, ANSWERS[check.answer]].filter(Boolean).join(', ') : 'Not given',
            };
          }),
        ]}
      />
    </Card>
  );
}
