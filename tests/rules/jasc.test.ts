import { describe, expect, it } from 'vitest';
import { JASC_CODES, jascCode, jascLabel, PARTS_OF_AIRCRAFT, partOf } from '../../lib/rules/jasc';

/** Code table of the project's reference list: 12 codes checked in FAA copies, 259 from memory; parts are our design. */
describe('JASC codes', () => {
  it('are 271, four digits, unique and ascending', () => {
    const codes = JASC_CODES.map((entry) => entry.code);
    expect(codes).toHaveLength(271);
    expect(new Set(codes).size).toBe(271);
    expect([...codes].sort()).toEqual(codes);
    for (const entry of JASC_CODES) {
      expect(entry.code).toMatch(/^\d{4}$/);
      expect(entry.title).not.toBe('');
      expect(entry.chapterTitle).not.toBe('');
      expect(PARTS_OF_AIRCRAFT).toContain(entry.part);
    }
  });

  it('say which 12 were checked', () => {
    const checked = JASC_CODES.filter((entry) => entry.status === 'checked').map((entry) => entry.code);
    expect(checked).toEqual([
      ...['1100', '1210', '1220', '1230', '1240', '2200', '2210', '2211', '2212', '2213', '2810', '5540'],
    ]);
  });

  // titles seen in copies of the FAA table
  it.each([
    ['1100', 'Placards and Markings'],
    ['1210', 'Fuel Servicing'],
    ['2210', 'Autopilot System'],
    ['2810', 'Fuel Storage'],
    ['5540', 'Rudder Structure'],
  ])('%s is %s', (code, title) => {
    const entry = jascCode(code);
    expect(entry.known && entry.value.title).toBe(title);
    expect(jascLabel(code)).toBe(`${code} ${title}`);
  });

  // grouping stated in the reference list: 61 propeller; 71 to 85 powerplant; gauges instrument; 22, 23, other 34 avionics
  it.each([
    ['6111', 'propeller'],
    ['7110', 'powerplant'],
    ['8550', 'powerplant'],
    ['7714', 'instrument'],
    ['2841', 'instrument'],
    ['3414', 'instrument'],
    ['2312', 'avionics'],
    ['3452', 'avionics'],
    ['2432', 'airframe'],
    ['3340', 'airframe'],
  ])('%s belongs to %s', (code, part) => {
    expect(partOf(code)).toEqual({ known: true, value: part });
  });

  it.each(['', '0000', '61', '6111 ', 'constructor', '9999'])('"%s" is unknown, never guessed', (code) => {
    expect(jascCode(code).known).toBe(false);
    const part = partOf(code);
    expect(part.known).toBe(false);
    expect(jascLabel(code)).toContain('not in the table');
  });
});
