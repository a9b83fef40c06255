'use client';

import { useWords } from '#words';
import { type OwedTest } from '@/lib/rules/aircraft';
import { startTestInput } from '@/lib/work/schema';
import { STARTS, testInWords, testTitle } from '@/lib/work/tests-owed';
import { CommandForm } from '../../_ui/command-form';
import { start as startTest } from '../actions';
import { useAct } from './use-act';

/** Begins the test that signed work left owed. Its signature settles it. */
export function StartTestForm({ workId, test }: { workId: string; test: OwedTest }) {
  const t = useWords();
  const command = useAct({
    action: startTest,
    schema: startTestInput,
    start: {},
    input: () => ({ ...STARTS[test], testForId: workId, title: testTitle(test) }),
    done: t('The test is begun. The aircraft does not fly until it is signed or given up.'),
  });
  return (
    <CommandForm
      command={command}
      submit={t('Start: {testTitle}', { testTitle: t(testTitle(test)) })}
      pendingWords={t('Starting…')}
      label={t(testInWords(test))}
    />
  );
}
