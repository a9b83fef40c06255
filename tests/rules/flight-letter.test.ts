/**
 * The letter about a released flight. One line in the subject whatever is in it: RFC 5322, 2.2. That the meaning stands
 * first, and that no letter says an aircraft may fly, is this house's own.
 */
import { describe, expect, test } from 'vitest';
import { FLIGHT_NOTICE_KINDS } from '@/lib/notices/in-words';
import { writeFlightLetter, type FlightTidings } from '@/lib/notices/write-letter';

const tidings = (change: Partial<FlightTidings> = {}): FlightTidings => ({
  what: 'release-void',
  registration: 'N0417W',
  fromIdent: '0WC',
  toIdent: '0WA',
  departAt: '2026-11-25T16:00:00Z',
  departZone: 'America/Chicago',
  writeUp: { number: 'W-0001', title: 'Propeller nick' },
  byName: 'Ash Ironweed',
  words: 'The answer is no go now: Propeller nick.',
  at: '2026-11-25T15:10:00Z',
  zone: 'America/Chicago',
  operatorName: 'Invented school',
  link: 'https://wheelchock.school.example/ramp/flight/1',
  ...change,
});

test('a void release: what it is and what it means first, the flight in the time of its place, the write-up, the link', () => {
  const { subject, body } = writeFlightLetter(tidings());
  expect(subject).toBe('Release void: N0417W, 0WC to 0WA, 25 Nov 2026, 10:00 (America/Chicago)');
  expect(body.startsWith('Release void. Do not depart on this release.')).toBe(true);
  for (const part of [
    'Ash Ironweed',
    '09:10',
    'W-0001, Propeller nick',
    '/ramp/flight/1',
    'never by a letter',
  ]) {
    expect(body).toContain(part);
  }
});

describe.each(FLIGHT_NOTICE_KINDS)('%s', (what) => {
  test('has no line break in its subject, and somebody’s words are set in', () => {
    const words = 'First.\r\nBcc: everybody@elsewhere.example';
    const { subject, body } = writeFlightLetter(tidings({ what, words, registration: 'N0\r\nBcc: x' }));
    expect(subject).not.toMatch(/[\r\n]/);
    expect(body).toContain('    Bcc: everybody@elsewhere.example');
    expect(body).not.toMatch(/^Bcc/m);
  });

  test('nowhere says that it may fly', () => {
    const { body } = writeFlightLetter(tidings({ what, words: 'As it was.' }));
    expect(body).not.toMatch(/\b(may|can) fly\b(?! is answered)/);
    expect(body).not.toMatch(/is airworthy/);
  });
});
