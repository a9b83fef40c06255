'use client';

import { useWords } from '#words';
import { useRouter } from 'next/navigation';
import { CommandForm } from '../../_ui/command-form';
import { useCommand } from '../../_ui/use-command';
import { sayNewsSeen } from './actions';

/** Says that the news shown was seen. Then it stands under "Earlier news"; `headingId` takes the focus. */
export function NewsSeen({ noticeIds, headingId }: { noticeIds: string[]; headingId: string }) {
  const t = useWords();
  const router = useRouter();
  const command = useCommand({
    action: sayNewsSeen,
    start: { noticeIds },
    onDone: () => {
      document.getElementById(headingId)?.focus();
      router.refresh();
    },
  });
  return <CommandForm command={command} submit={t('I have seen this')} label={t('News seen')} wide />;
}
