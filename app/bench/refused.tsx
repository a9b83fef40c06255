import { useWords } from '#words';
import { notFound } from 'next/navigation';
import { type WhoAmI } from '@/lib/people/who-am-i';
import { type Problem } from '@/lib/problems';
import { LinkButton } from '../_ui/button';
import { PageTitle } from '../_ui/page';
import { ProblemNotice } from '../_ui/problem-notice';
import { Shell } from '../_ui/shell';

/** A page that was refused, said plainly. A record that is not here is "not found", whatever the reason. */
export function Refused({ who, problem, title }: { who: WhoAmI; problem: Problem; title: string }) {
  const t = useWords();
  if (problem.code === 'not_found' || problem.code === 'invalid') notFound();
  return (
    <Shell who={who}>
      <PageTitle>{title}</PageTitle>
      <ProblemNotice problem={problem}>
        <LinkButton href="/">{t('Go to your start page')}</LinkButton>
      </ProblemNotice>
    </Shell>
  );
}
