import { describe, expect, test } from 'vitest';
import { known, unknown } from '../../lib/rules/facts';
import { repairDeadline } from '../../lib/rules/advisory/mmel-repair-categories';
import { endOfDay } from '../../lib/rules/months';

/*
 * FAA MMEL Policy Letter 25, repair categories. What stands behind each row is said beside it:
 * - "memory": the published worked example (26 January, category B), remembered, not read in a copy;
 * - "checked": the count of days of B agrees with a safety report that quotes a list (ASRS 276675);
 * - "derived": worked out by hand from the words of the category, no published example.
 */
const NOT_READ = unknown('days of a category that states none itself');

describe('last day of the interval, the day of the write-up not counted', () => {
  test.each([
    { category: 'B', recorded: '2026-01-26', last: '2026-01-29', source: 'memory: published worked example' },
    {
      category: 'B',
      recorded: '2026-03-05',
      last: '2026-03-08',
      source: 'checked: midnight of the third day',
    },
    { category: 'C', recorded: '2026-03-05', last: '2026-03-15', source: 'derived' },
    { category: 'D', recorded: '2026-03-05', last: '2026-07-03', source: 'derived' },
    { category: 'B', recorded: '2024-02-27', last: '2024-03-01', source: 'derived: leap day counted' },
    { category: 'B', recorded: '2026-12-30', last: '2027-01-02', source: 'derived: over the year' },
    { category: 'C', recorded: '2026-10-25', last: '2026-11-04', source: 'derived: over a change of clocks' },
  ] as const)('$category recorded $recorded ends with $last ($source)', ({ category, recorded, last }) => {
    expect(repairDeadline(category, recorded, NOT_READ)).toEqual(known(last));
  });

  // The published example in its own words: ends at the midnight ending the 29th. Status: memory.
  test('the interval ends at the midnight that ends the last day', () => {
    const last = repairDeadline('B', '2026-01-26', NOT_READ);
    expect(last.known && endOfDay(last.value, 'America/Chicago')).toBe('2026-01-30T06:00:00Z');
  });

  // Policy Letter 25, category A: as the remarks state, the day of recording excluded (checked in a quotation).
  test('category A runs as its remarks state, and is unknown without them', () => {
    expect(repairDeadline('A', '2026-03-05', known(5))).toEqual(known('2026-03-10'));
    expect(repairDeadline('A', '2026-03-05', NOT_READ)).toEqual(NOT_READ);
  });
});
