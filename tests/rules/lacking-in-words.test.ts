/**
 * What a paragraph is called where a fact is missing. Sources: what each paragraph is about stands in 14 CFR at the number beside it
 * (91.205(b) and (d): read, 91.205(b)(17), (e): from memory; the others as in the registry of lib/rules/law). The two or three words
 * are our own.
 */
import { describe, expect, test } from 'vitest';
import { ruleInWords } from '@/lib/rules/lacking-in-words';
import type { CiteId } from '@/lib/rules/law';

describe('a paragraph that a fact is missing for', () => {
  test.each<[cite: CiteId, words: string, paragraph: string]>([
    ['14cfr91.203(a)(1)', 'airworthiness certificate', '91.203(a)(1)'],
    ['14cfr91.203(a)(2)', 'registration', '91.203(a)(2)'],
    ['14cfr47.40', 'registration', '47.40'],
    ['14cfr47.40(a)', 'registration', '47.40(a)'],
    ['14cfr91.9(b)', 'flight manual', '91.9(b)'],
    ['14cfr91.9(b)(1)', 'flight manual', '91.9(b)(1)'],
    ['14cfr91.205(a)', 'standard category', '91.205(a)'],
    // 91.205(b), day under VFR.
    ['14cfr91.205(b)(1)', 'airspeed', '91.205(b)(1)'],
    ['14cfr91.205(b)(2)', 'the altimeter', '91.205(b)(2)'],
    ['14cfr91.205(b)(3)', 'magnetic direction', '91.205(b)(3)'],
    ['14cfr91.205(b)(4)', 'tachometer', '91.205(b)(4)'],
    ['14cfr91.205(b)(5)', 'oil pressure', '91.205(b)(5)'],
    ['14cfr91.205(b)(6)', 'coolant temperature', '91.205(b)(6)'],
    ['14cfr91.205(b)(7)', 'oil temperature', '91.205(b)(7)'],
    ['14cfr91.205(b)(8)', 'manifold pressure', '91.205(b)(8)'],
    ['14cfr91.205(b)(9)', 'fuel gauge', '91.205(b)(9)'],
    ['14cfr91.205(b)(10)', 'landing gear position', '91.205(b)(10)'],
    ['14cfr91.205(b)(11)', 'anticollision light', '91.205(b)(11)'],
    ['14cfr91.205(b)(12)', 'flotation', '91.205(b)(12)'],
    ['14cfr91.205(b)(13)', 'safety belt', '91.205(b)(13)'],
    ['14cfr91.205(b)(14)', 'shoulder harness', '91.205(b)(14)'],
    ['14cfr91.205(b)(15)', 'emergency locator transmitter', '91.205(b)(15)'],
    ['14cfr91.205(b)(17)', 'shoulder harness', '91.205(b)(17)'],
    // 91.205(c), at night.
    ['14cfr91.205(c)(2)', 'position light', '91.205(c)(2)'],
    ['14cfr91.205(c)(3)', 'anticollision light', '91.205(c)(3)'],
    ['14cfr91.205(c)(4)', 'landing light', '91.205(c)(4)'],
    ['14cfr91.205(c)(5)', 'electrical', '91.205(c)(5)'],
    ['14cfr91.205(c)(6)', 'fuse', '91.205(c)(6)'],
    // 91.205(d) and (e), under IFR.
    ['14cfr91.205(d)(2)', 'radio and navigation', '91.205(d)(2)'],
    ['14cfr91.205(d)(3)', 'rate of turn', '91.205(d)(3)'],
    ['14cfr91.205(d)(4)', 'slip', '91.205(d)(4)'],
    ['14cfr91.205(d)(5)', 'sensitive altimeter', '91.205(d)(5)'],
    ['14cfr91.205(d)(6)', 'clock', '91.205(d)(6)'],
    ['14cfr91.205(d)(7)', 'generator', '91.205(d)(7)'],
    ['14cfr91.205(d)(8)', 'pitch and bank', '91.205(d)(8)'],
    ['14cfr91.205(d)(9)', 'directional gyro', '91.205(d)(9)'],
    ['14cfr91.205(e)', '240', '91.205(e)'],
    ['14cfr91.207(a)(2)', 'emergency locator transmitter', '91.207(a)(2)'],
    ['14cfr91.207(d)', 'emergency locator transmitter', '91.207(d)'],
    ['14cfr91.209(a)(1)', 'lights', '91.209(a)(1)'],
    ['14cfr91.213(d)(2)(iii)', 'inoperative equipment', '91.213(d)(2)(iii)'],
    ['14cfr91.215(b)', 'the transponder rule', '91.215(b)'],
    ['14cfr91.225(a)', 'ADS-B Out', '91.225(a)'],
    ['14cfr91.405(a)', 'discrepancy', '91.405(a)'],
    ['14cfr91.407(a)(1)', 'return to service', '91.407(a)(1)'],
    ['14cfr91.409(a)', 'annual', '91.409(a)'],
    ['14cfr91.409(b)', '100-hour', '91.409(b)'],
    ['14cfr141.39(a)(3)', '100-hour', '141.39(a)(3)'],
    ['14cfr91.411(a)(1)', 'altimeter and static', '91.411(a)(1)'],
    ['14cfr91.413(a)', 'transponder test', '91.413(a)'],
    ['14cfr91.171(a)(2)', 'VOR check', '91.171(a)(2)'],
    ['14cfr91.403(c)', 'life limit', '91.403(c)'],
    ['14cfr91.417(a)(2)(i)', 'time in service', '91.417(a)(2)(i)'],
    ['14cfr91.7(a)', 'airworthy', '91.7(a)'],
    ['14cfr39.7', 'airworthiness directive', '39.7'],
  ])('%s is the %s rule of %s', (cite, words, paragraph) => {
    const said = ruleInWords(cite);
    expect(said).toContain(words);
    expect(said).toMatch(/^the .+ rule of [\d.]/);
    expect(said.endsWith(` ${paragraph}`)).toBe(true);
  });

  // 91.205(b)(16) is reserved, and begins like (b)(1); (c)(1) and (d)(1) only lead back to (b); the others are not in the table.
  test.each<[CiteId, string]>([
    ['14cfr91.205(b)(16)', '91.205(b)(16)'],
    ['14cfr91.205(c)(1)', '91.205(c)(1)'],
    ['14cfr91.205(d)(1)', '91.205(d)(1)'],
    ['14cfr91.409(d)', '91.409(d)'],
    ['14cfr91.9(a)', '91.9(a)'],
  ])('%s is called by its paragraph alone', (cite, paragraph) => {
    expect(ruleInWords(cite)).toBe(paragraph);
  });
});
