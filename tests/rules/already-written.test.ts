/**
 * When a finding the walk raises counts as written up already. Source: issue 3 ("a number outside its limit raises a proposed
 * finding by itself", "missing placard is itself a finding"); the scheme is our design, no source.
 */
import { describe, expect, test } from 'vitest';
import { isWrittenUp, type WrittenAtItem } from '@/lib/rules/walkaround/already-written';
import { NO_ANSWER, type ItemAnswer } from '@/lib/rules/walkaround/answers';
import type { RaisedByWalk } from '@/lib/rules/walkaround/judge-walk';

const AT = '2026-11-25T12:00:00.000Z';
const read = (at: string): ItemAnswer => ({ ...NO_ANSWER, readings: [{ value: 40, at, struck: false }] });
const raised = (findingKey: string | null): RaisedByWalk => ({
  itemKey: 'item',
  station: 'cabin',
  findingKey,
  measurements: {},
  words: '',
  line: { effect: 'bars', cite: '14cfr91.405(a)', because: '' },
});
const written = (more: Partial<WrittenAtItem>): WrittenAtItem => ({
  itemKey: 'item',
  isOwn: true,
  findingKey: 'oil-low',
  state: 'open',
  severity: 'grounding',
  closedAt: null,
  ...more,
});

describe('written up already', () => {
  test.each<[string, Partial<WrittenAtItem>, boolean]>([
    ['the same finding, grounding', {}, true],
    ['undecided, which grounds', { severity: null }, true],
    ['an observation of one that grounds', { isOwn: false }, true],
    ['another finding at the item', { findingKey: 'oil-leak' }, false],
    ['the same finding at another item', { itemKey: 'other' }, false],
    ['the same finding at no item', { itemKey: null }, false],
    ['of this walk and judged a watch since', { severity: 'watch' }, true],
    ['of this walk and deferred since', { state: 'deferred', severity: 'limiting' }, true],
    ['an observation of a watch', { isOwn: false, severity: 'watch' }, false],
    ['an observation of a note', { isOwn: false, severity: 'note' }, false],
    ['an observation of what is deferred', { isOwn: false, state: 'deferred', severity: 'limiting' }, false],
  ])('%s: %s', (_, more, expected) => {
    expect(isWrittenUp(raised('oil-low'), read(AT), [written(more)])).toBe(expected);
  });

  test.each([
    ['just before the closing', '2026-11-25T11:59:59.999Z', true],
    ['at the closing', AT, true],
    ['just after it', '2026-11-25T12:00:00.001Z', false],
  ])('closed, and read %s', (_, readAt, expected) => {
    const closed = written({ state: 'closed', severity: 'grounding', closedAt: AT });
    expect(isWrittenUp(raised('oil-low'), read(readAt), [closed])).toBe(expected);
  });

  test('"something else" counts only while it grounds: it does not say what was found', () => {
    const somethingElse = { findingKey: null };
    expect(isWrittenUp(raised(null), read(AT), [written(somethingElse)])).toBe(true);
    expect(isWrittenUp(raised(null), read(AT), [written({ ...somethingElse, severity: 'note' })])).toBe(
      false,
    );
    expect(isWrittenUp(raised('oil-low'), read(AT), [written(somethingElse)])).toBe(false);
  });

  test('a missing placard is not covered by having seen the deferred thing it belongs to', () => {
    const seen = written({ isOwn: false, findingKey: 'landing-light-dead', state: 'deferred' });
    expect(isWrittenUp(raised('placard-missing'), NO_ANSWER, [seen])).toBe(false);
  });
});
