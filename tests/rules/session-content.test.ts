/** What a session's cookie must say to count. Source: issue 6, sessions that can be ended need a row each (own choice). */
import { expect, test } from 'vitest';
import { readSessionContent } from '@/app/_session/session-content';

const whole = {
  personId: '0b6fb2a7-6a59-4e8e-9a5f-0d4b7a3c1f01',
  operatorId: '0b6fb2a7-6a59-4e8e-9a5f-0d4b7a3c1f02',
  sessionVersion: 1,
  sessionId: '0b6fb2a7-6a59-4e8e-9a5f-0d4b7a3c1f03',
};
const without = (key: keyof typeof whole) =>
  Object.fromEntries(Object.entries(whole).filter(([name]) => name !== key));

test('a whole one is read, and nothing beside it', () => {
  expect(readSessionContent({ ...whole, keyId: 'x', roles: ['manager'], iat: 1 })).toEqual(whole);
});

test.each([
  ['from before there were rows of sessions', without('sessionId')],
  ['without a person', without('personId')],
  ['without an operator', without('operatorId')],
  ['without a version', without('sessionVersion')],
  ['with a session that is no number of ours', { ...whole, sessionId: 'latest' }],
  ['nothing', null],
])('one %s signs nobody in', (_, token) => {
  expect(readSessionContent(token)).toBeNull();
});
