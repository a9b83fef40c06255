const within = (...names: string[]): string[] => names.map((name) => `lib/rules/${name}.ts`);

/** What a flight's answer stands on: an error here is a wrong go. */
export const CORE: readonly string[] = within(
  'answer',
  'judge-discrepancy',
  'special-flight-permit',
  'part-91/91-213-a-with-mel',
  'part-91/91-213-d-without-mel',
  'part-91/91-213-edges',
  'part-91/91-213-item',
  'part-91/91-213-inoperative-equipment',
  'part-91/91-213-steps',
);

const NAMED: Readonly<Record<string, readonly string[]>> = {
  deferring: within('part-91/91-213*'),
  answer: within(
    'special-flight-permit',
    'judge-discrepancy',
    'answer',
    'who-may-sign',
    'release-state',
    'who-may-determine',
  ),
  'part-91': [...within('part-91/*'), '!lib/rules/part-91/91-213*.ts'],
  'other-parts': within('part-39/*', 'part-43/*', 'part-47/*', 'part-65/*'),
  house: within('house/*', 'walkaround/*'),
  findings: within('findings/*'),
  insight: within('insight/*', 'advisory/*', 'law/*', 'jasc*'),
  'over-time': within('over-time', 'moments*', 'light*', 'proposals*', 'forecast', 'flight-warnings', 'sun*'),
};

/** All of lib/rules in pieces, so that a run that is cut costs a piece; what is dangerous when wrong comes first. */
export const SHARDS: Readonly<Record<string, readonly string[]>> = {
  ...NAMED,
  rest: [
    'lib/rules/**/*.ts',
    ...Object.values(NAMED)
      .flat()
      .filter((glob) => !glob.startsWith('!'))
      .map((glob) => `!${glob}`),
  ],
};
