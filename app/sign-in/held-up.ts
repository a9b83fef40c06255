import { said } from '@/lib/words/said';

/** So many tries from one network were wrong that this one was not looked at (lib/access/sender-limit.ts). */
export const HELD_UP_WORDS = {
  title: said('Too many wrong passwords came from your network.'),
  then: said(
    'What you gave was not looked at, so this says nothing about it. Wait ten minutes, or use another network, like that of your phone.',
  ),
};
