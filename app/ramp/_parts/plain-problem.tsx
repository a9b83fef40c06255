import { useWords } from '#words';
import { type WhoAmI } from '@/lib/people/who-am-i';
import { type Problem } from '@/lib/problems';
import { PageTitle } from '../../_ui/page';
import { ProblemNotice } from '../../_ui/problem-notice';
import { Shell } from '../../_ui/shell';

/** The whole page when what was asked for cannot be had. */
export function PlainProblem({ who, problem }: { who: WhoAmI; problem: Problem }) {
  const t = useWords();
  return (
    <Shell who={who}>
      <PageTitle back={{ href: '/ramp', label: t('All aircraft') }}>
        {problem.code === 'not_found' ? t('Nothing here') : t('This page could not be shown')}
      </PageTitle>
      <ProblemNotice problem={problem} />
    </Shell>
  );
}
