'use client';

import { useWords } from '#words';
import { type EntryAsks } from '@/lib/work/entry-asks';
import { Checkbox } from '../../_ui/fields';
import { FormGroup } from './form-group';
import { YesNo } from './yes-no';

/**
 * Tests that the work leaves owed: 91.411(a)(2), (a)(3), 91.413(b). Asked where the system makes them possible; elsewhere on
 * the airframe whoever opened a static line on the way can say so.
 */
export function TestsFields(props: { questions: EntryAsks['testQuestions']; mayOpenStatic: boolean }) {
  const t = useWords();
  const { questions, mayOpenStatic } = props;
  if (questions.length > 0) {
    return (
      <FormGroup title={t('Tests owed after it')}>
        {questions.map(({ key, question, hint }) => (
          <YesNo key={key} name={`tests.${key}`} label={question} hint={hint} />
        ))}
      </FormGroup>
    );
  }
  if (!mayOpenStatic) return null;
  return (
    <FormGroup title={t('Tests owed after it')}>
      <Checkbox
        name="staticOnTheWay"
        label={t('A static line was opened on the way')}
        hint={t('Its test is owed then, before IFR in controlled airspace: 14 CFR 91.411(a)(2).')}
        optional
      />
    </FormGroup>
  );
}
