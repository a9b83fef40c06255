import { type Metadata } from 'next';
import { LinkButton } from './_ui/button';
import { PageTitle } from './_ui/page';
import { BareShell } from './_ui/bare-shell';

export const metadata: Metadata = { title: 'Not found' };

export default function NotFound() {
  return (
    <BareShell>
      <PageTitle lead="There is no such page or record here. A link may be old, or the record belongs to another operator.">
        Not found
      </PageTitle>
      <LinkButton href="/">Go to the start page</LinkButton>
    </BareShell>
  );
}
