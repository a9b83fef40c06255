import { said } from '../words/said';

/** What whoever vouches says, as it stands beside the signature. English: it is signed as it was shown. */
export const WRITE_UP_STATEMENT = said(
  'I have seen the document named here, and this is what it says of this open write-up. I judge and approve nothing by this.',
);
export const DEFERRAL_STATEMENT = said(
  'I have seen the document named here, and this is what it says of this deferral. I make no determination by this.',
);
export const LAST_DONE_STATEMENT = said(
  'I have seen the document named here, and this is what it says. I do not approve the work by this.',
);
export const DIRECTIVES_STATEMENT = said(
  'Every airworthiness directive that applies to this aircraft was gone through on the day named here; those that name equipment or recur are entered.',
);
export const PAPER_STATEMENT = said('I have read this paper, and this is what it says.');
export const MEL_STATEMENT = said(
  'I have held these items and this letter against the approved minimum equipment list of this aircraft, and they agree.',
);
export const LETTER_STATEMENT = said(
  'I have looked for the letter of authorization aboard, and this is what I found.',
);
export const NO_MEL_STATEMENT = said('This aircraft is operated without a minimum equipment list.');
export const MEL_END_STATEMENT = said(
  'This aircraft is not operated under this minimum equipment list any more.',
);
