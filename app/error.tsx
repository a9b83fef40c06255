'use client';

import { Say, useWords } from '#words';
import { useEffect } from 'react';
import { BareActs, BareCard, BareTitle, WayOut } from './_ui/bare-page';
import { BareShell } from './_ui/bare-shell';
import { ComesBack } from './_ui/comes-back';

/** A page that could not be drawn. Shows no old answer in its place: a stale go is worse than none. */
export default function ErrorPage({ error, retry }: { error: unknown; retry: () => void }) {
  const t = useWords();
  useEffect(() => {
    console.error(error);
  }, [error]);
  const event = error instanceof Error && 'digest' in error ? String(error.digest) : null;
  return (
    <BareShell>
      <BareTitle
        lead={t(
          'Something went wrong on our side, or the server cannot be reached. Nothing you sent before is lost, and nothing was changed by this. No answer on this page means no go.',
        )}
      >
        {t('This page could not be shown')}
      </BareTitle>
      <BareCard>
        <ComesBack retry={retry} />
        {event && (
          <p>
            <Say
              text="Tell whoever runs the server: event <code>{event}</code>."
              parts={{ code: <code /> }}
              values={{ event }}
            />
          </p>
        )}
        <BareActs press={t('Try again')} onPress={retry}>
          <WayOut href="/">{t('Go to the start page')}</WayOut>
        </BareActs>
      </BareCard>
    </BareShell>
  );
}
