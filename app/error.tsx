'use client';

import { useEffect } from 'react';
import { Button, ButtonRow, LinkButton } from './_ui/button';
import { Card, PageTitle } from './_ui/page';
import { BareShell } from './_ui/bare-shell';
import { ComesBack } from './_ui/comes-back';

/** A page that could not be drawn. Shows no old answer in its place: a stale go is worse than none. */
export default function ErrorPage({ error, retry }: { error: unknown; retry: () => void }) {
  useEffect(() => {
    console.error(error);
  }, [error]);
  const event = error instanceof Error && 'digest' in error ? String(error.digest) : null;
  return (
    <BareShell>
      <PageTitle lead="Something went wrong on our side, or the server cannot be reached. Nothing you sent before is lost, and nothing was changed by this. No answer on this page means no go.">
        This page could not be shown
      </PageTitle>
      <Card>
        <ComesBack retry={retry} />
        {event && (
          <p>
            Tell whoever runs the server: event <code>{event}</code>.
          </p>
        )}
        <ButtonRow>
          <Button weight="main" onClick={retry}>
            Try again
          </Button>
          <LinkButton href="/">Go to the start page</LinkButton>
        </ButtonRow>
      </Card>
    </BareShell>
  );
}
