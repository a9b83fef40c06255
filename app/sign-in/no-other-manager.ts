import { said } from '@/lib/words/said';

/** The last way back: `npm run let-in` (docs/operate.md). */
export const NO_OTHER_MANAGER = said(
  'Are you the only manager? Then ask whoever keeps the server: a command on its console makes you a link (docs/operate.md, “A manager who is locked out”).',
);
