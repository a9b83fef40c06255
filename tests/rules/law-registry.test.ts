import { describe, expect, it } from 'vitest';
import { LAW, type CiteId, type LawEntry } from '@/lib/rules/law';
import { NOT_CODED } from '@/lib/rules/law/not-coded';
import { OTHER } from '@/lib/rules/law/other';
import { PART_43 } from '@/lib/rules/law/part-43';
import { PART_43_APPENDICES } from '@/lib/rules/law/part-43-appendices';
import { PART_65 } from '@/lib/rules/law/part-65';
import { PART_91_EQUIPMENT } from '@/lib/rules/law/part-91-equipment';
import { PART_91_INOPERATIVE } from '@/lib/rules/law/part-91-inoperative';
import { PART_91_MAINTENANCE } from '@/lib/rules/law/part-91-maintenance';
import { PART_91_OPERATING } from '@/lib/rules/law/part-91-operating';

/** Checks of the register itself. Its texts stand on the copies named in each entry. */

const entries = Object.entries(LAW) as [CiteId, LawEntry][];
const cfr = entries.filter(([id]) => id.startsWith('14cfr'));

const PARAGRAPH = /^14cfr(\d+)\.(\d+)((?:\([a-zA-Z0-9]+\))*)$/;
const DEFINITION = /^14cfr1\.1\(([a-z]+(?:-[a-z]+)*)\)$/;
const APPENDIX = /^14cfr(\d+)app([A-Z])((?:\([a-zA-Z0-9]+\))*)$/;

/** The label people write, made from the id alone. Undefined when the id does not follow the scheme. */
function labelFromId(id: string): string | undefined {
  const definition = DEFINITION.exec(id);
  if (definition) return `14 CFR 1.1 (${definition[1]?.replaceAll('-', ' ')})`;
  const paragraph = PARAGRAPH.exec(id);
  if (paragraph) return `14 CFR ${paragraph[1]}.${paragraph[2]}${paragraph[3]}`;
  const appendix = APPENDIX.exec(id);
  if (appendix) return `14 CFR part ${appendix[1]}, Appendix ${appendix[2]}${appendix[3]}`;
  const circular = /^ac([\d.-]+\d[a-z]?)$/.exec(id);
  if (circular) return `AC ${circular[1]?.toUpperCase()}`;
  const category = /^mmel-category-([a-d])$/.exec(id);
  if (category) return `MMEL repair category ${category[1]?.toUpperCase()}`;
  return undefined;
}

/** Documents and marks whose label cannot be made from the id. */
const OWN_LABEL: readonly string[] = [
  '87fr71210',
  'afh',
  'counsel-letter-2015',
  'counsel-letter-2018',
  'house-caution',
  'house-rule',
  'mmel-extension',
  'p-8740-35',
  'pl-25',
  'trade-practice',
];

describe('law register', () => {
  it.each(entries)('%s: id follows the scheme and the label follows the id', (id, entry) => {
    if (OWN_LABEL.includes(id)) expect(entry.label).toMatch(/^[A-Z0-9]/);
    else expect(entry.label).toBe(labelFromId(id));
  });

  it('gives every label once', () => {
    const labels = entries.map(([, entry]) => entry.label);
    expect(labels.filter((label, at) => labels.indexOf(label) !== at)).toEqual([]);
  });

  it.each(entries)('%s: says what it says, in one to five sentences', (_id, entry) => {
    expect(entry.gist.trim()).toBe(entry.gist);
    expect(entry.gist).toMatch(/\.$/);
    expect(entry.gist.length).toBeLessThanOrEqual(450);
  });

  it.each(entries)('%s: names the copy read, or says why it is in doubt', (_id, entry) => {
    expect(entry.source.trim().length).toBeGreaterThan(3);
    const unread = /^(from memory|no copy|unknown|not found|our own choice|common practice)/i;
    if (entry.status === 'checked') expect(entry.source).not.toMatch(unread);
  });

  it('keeps "reading" for our own choice and the habit of the trade', () => {
    const reading = entries.filter(([, entry]) => entry.status === 'reading').map(([id]) => id);
    expect(reading.sort()).toEqual(['house-caution', 'house-rule', 'trade-practice']);
  });

  it('has the parent section of every paragraph it holds with a third level or deeper', () => {
    const ids = new Set<string>(entries.map(([id]) => id));
    const orphans = cfr
      .map(([id]) => ({ id, parent: id.replace(/\([^()]+\)$/, '') }))
      .filter(({ parent }) => /\)$/.test(parent) && !ids.has(parent));
    expect(orphans).toEqual([]);
  });

  it('holds no id in two files', () => {
    const parts: readonly object[] = [
      OTHER,
      PART_43,
      PART_43_APPENDICES,
      PART_65,
      PART_91_EQUIPMENT,
      PART_91_INOPERATIVE,
      PART_91_MAINTENANCE,
      PART_91_OPERATING,
    ];
    const total = parts.reduce((sum, part) => sum + Object.keys(part).length, 0);
    expect(total).toBe(entries.length);
  });
});

describe('paragraphs not coded', () => {
  it.each(Object.entries(NOT_CODED))('%s is held and has a reason', (id, because) => {
    expect(Object.keys(LAW)).toContain(id);
    expect(because).toMatch(/^\S.{15,}[^.\s]$/);
  });
});
