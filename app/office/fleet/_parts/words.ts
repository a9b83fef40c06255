import { said } from '@/lib/words/said';

export const YES_NO_OR_NOT = [
  { value: 'yes', label: said('Yes') },
  { value: 'no', label: said('No') },
  { value: 'not-known', label: said('Not known yet') },
] as const;
