import { useWords } from '#words';
import { LinkButton } from '@/app/_ui/button';
import { ComesBack } from '@/app/_ui/comes-back';
import { PageTitle } from '@/app/_ui/page';
import { ProblemNotice } from '@/app/_ui/problem-notice';
import { Shell } from '@/app/_ui/shell';
import { type WhoAmI } from '@/lib/people/who-am-i';
import { type Problem } from '@/lib/problems';

/** A desk page that the server refused to show: the refusal in its own words, and the way back. */
export function Refused({ who, title, problem }: { who: WhoAmI; title: string; problem: Problem }) {
  const t = useWords();
  return (
    <Shell who={who}>
      <PageTitle>{title}</PageTitle>
      {(problem.code === 'try_again' || problem.code === 'bug') && <ComesBack />}
      <ProblemNotice problem={problem}>
        <LinkButton href="/desk">{t('To the board')}</LinkButton>
      </ProblemNotice>
    </Shell>
  );
}
