/**
 * The papers as drawn, read back with another program (poppler's pdftotext, pdftocairo, pdfinfo). Sources: 14 CFR 43.9(a),
 * 43.11(a) and (b), 91.213(d)(3), 91.405; issue 4, "Papers" ("real size, several a sheet ... rendered and read back with
 * another tool"). Sizes of labels: our own choice, no source.
 */
import { describe, expect, test } from 'vitest';
import { deferralList, type DeferralListPaper } from '@/lib/papers/deferral-list';
import { discrepancyList, type ListPaper } from '@/lib/papers/discrepancy-list';
import { inspectionEntries, type InspectionPaper } from '@/lib/papers/inspection-entries';
import { drawable } from '@/lib/papers/letters';
import { logbookEntry, type EntryPaper } from '@/lib/papers/logbook-entry';
import { malfunctionFacts, withGaps } from '@/lib/papers/malfunction-facts';
import { malfunctionPaper } from '@/lib/papers/malfunction-paper';
import { fileName, type PaperFrame, type PaperSignature } from '@/lib/papers/paper';
import { placardSheet, type PlacardToPrint } from '@/lib/papers/placards';
import { boxesOf, infoOf, strokesOf, textOf } from '../fixtures/pdf';

/** Letters beyond Windows code page 1252: what a standard font of PDF cannot draw. */
const LETTERS = 'Łukasz Žižka, 3/8″ – 5 µm';

const FRAME: PaperFrame = {
  aircraft: {
    registration: 'N0PAPER',
    serial: 'INVENTED-9',
    typeName: 'Foxglove 160',
    operatorName: 'Quill & Paper Flyers',
    zone: 'America/Chicago',
  },
  madeAt: '2026-11-25T15:00:00Z',
};

const SIGNATURE: PaperSignature = {
  name: 'Łukasz Žižka',
  certificateKind: 'mechanic',
  certificateNumber: 'M-778899',
  signedOn: '2026-11-25',
  signedAt: '2026-11-25T14:58:00Z',
  statement:
    'I approve the aircraft for return to service with respect to the work described here and no other.',
  hash: 'ab12cd34ef56ab78'.repeat(4),
  changes: [],
};

const ENTRY: EntryPaper = {
  ...FRAME,
  fileName: 'x.pdf',
  workId: '0b5f4f0e-7f8f-4b3c-9a53-0a4a3d1f2b11',
  entry: {
    aircraft: 'N0PAPER',
    serial: 'INVENTED-9',
    writeUp: 'W-0077',
    title: 'Replace left main tyre',
    part: 'airframe',
    jasc: '3244',
    workKind: 'minor',
    preventiveItem: null,
    swapOnly: false,
    description: `Wheel apart, new tyre and tube fitted. ${LETTERS}`,
    references: 'Invented wheel manual, chapter 4',
    partsUsed: null,
    completedOn: '2026-11-24',
    performedBy: 'Helper Handwell',
    ttisTenths: 54321,
    checkFlightNeeded: false,
    checkFlightReason: 'Nothing that changes how it flies.',
    parts: [
      {
        did: 'fitted',
        name: 'tyre',
        number: 'T-600-6',
        serial: 'S-1',
        batch: 'L7',
        quantity: '1',
        release: 'tag 8130-3 no. 5',
      },
    ],
    laborTenths: 15,
  },
  signature: SIGNATURE,
  supersedes: null,
  supersededBy: null,
  checkFlight: null,
};

describe('the logbook entry', () => {
  test('holds every part of 43.9(a), the signature by name, kind, number and date, and the short hash', async () => {
    const text = await textOf(await logbookEntry(ENTRY));
    for (const words of [
      'Wheel apart, new tyre and tube fitted.', // (a)(1)
      'Invented wheel manual, chapter 4', // (a)(1), data
      '24 Nov 2026', // (a)(2)
      'Helper Handwell', // (a)(3)
      'Signed electronically by Łukasz Žižka', // (a)(4)
      'Mechanic',
      'M-778899',
      '25 Nov 2026',
      SIGNATURE.statement,
      'ab12cd34ef56ab78',
      '5432.1 h',
      'N0PAPER, serial INVENTED-9, Foxglove 160',
      'fitted: tyre, part no. T-600-6, serial S-1, batch L7, quantity 1, release tag 8130-3 no. 5',
      'Not needed. Nothing that changes how it flies.',
    ]) {
      expect(text).toContain(words);
    }
  });

  test('draws letters beyond the old code pages', async () => {
    expect(await textOf(await logbookEntry(ENTRY))).toContain(LETTERS);
  });

  test('is tagged, titled and in English (WCAG 2.2, 1.3.1, 2.4.2, 3.1.1 as PDF)', async () => {
    const info = await infoOf(await logbookEntry(ENTRY));
    expect(info.get('Tagged')).toBe('yes');
    expect(info.get('Title')).toBe('N0PAPER: maintenance entry of 24 Nov 2026');
    expect(info.get('Page size')).toBe('612 x 792 pts (letter)');
    const raw = Buffer.from(await logbookEntry(ENTRY)).toString('latin1');
    expect(raw).toContain('/Lang (en)');
    expect(raw).toContain('/DisplayDocTitle true');
  });

  test('a correction says what it takes the place of and why; the corrected one says it is superseded', async () => {
    const correction = await textOf(
      await logbookEntry({
        ...ENTRY,
        supersedes: { hash: 'feedbeef'.repeat(8), signedOn: '2026-11-20', why: 'Serial number misread.' },
      }),
    );
    expect(correction).toContain(
      'CORRECTION. Takes the place of entry feedbeeffeedbeef of 20 Nov 2026. Why: Serial number misread.',
    );
    const corrected = await textOf(
      await logbookEntry({ ...ENTRY, supersededBy: { hash: 'feedbeef'.repeat(8), signedOn: '2026-11-25' } }),
    );
    expect(corrected).toContain('SUPERSEDED on 25 Nov 2026 by entry feedbeeffeedbeef');
  });

  test('a record changed since it was signed says so, and in which column', async () => {
    const text = await textOf(
      await logbookEntry({
        ...ENTRY,
        signature: {
          ...SIGNATURE,
          changes: ['was changed after it was signed: statement is not what was signed'],
        },
      }),
    );
    expect(text).toContain('THIS RECORD IS NOT AS IT WAS SIGNED');
    expect(text).toContain('statement is not what was signed');
  });

  test('an owed check flight is said: nobody is carried (91.407(b))', async () => {
    const owed = { ...ENTRY, entry: { ...ENTRY.entry, checkFlightNeeded: true } };
    expect(await textOf(await logbookEntry(owed))).toContain('NEEDED and not flown');
  });

  test('the frame to cut along is 148 mm wide and ends where the text ends', async () => {
    const bytes = await logbookEntry(ENTRY);
    const frame = (await strokesOf(bytes, 1)).find(({ width }) => width > 100);
    expect(frame?.width).toBeCloseTo(148, 0);
    const last = (await boxesOf(bytes, 1)).filter(({ word }) => word === '91.417(a)(1)(iii)').at(-1);
    expect(frame && frame.top + frame.height).toBeGreaterThan(last?.bottom ?? Infinity);
    expect(frame && frame.top + frame.height - (last?.bottom ?? 0)).toBeLessThan(12);
  });
});

describe('hostile words break nothing and lose nothing', () => {
  test('a very long word without a blank is broken and whole', async () => {
    // As long as a description may be.
    const long = 'Q'.repeat(2000);
    const bytes = await logbookEntry({ ...ENTRY, entry: { ...ENTRY.entry, description: long } });
    const counted = (await textOf(bytes)).match(/Q/g)?.length ?? 0;
    expect(counted).toBe(2000);
  });

  test('many long paragraphs keep their first and last word, and the signature comes after them', async () => {
    const long = `first ${'and so on until the sheet is full, '.repeat(400)}last`;
    const bytes = await logbookEntry({ ...ENTRY, entry: { ...ENTRY.entry, description: long } });
    expect(Number((await infoOf(bytes)).get('Pages'))).toBeGreaterThan(1);
    expect(await textOf(bytes, 2)).toContain('Piece 2 of');
    const text = await textOf(bytes);
    expect(text).toContain('first and so on');
    expect(text.indexOf('full, last')).toBeGreaterThan(0);
    expect(text.indexOf('Signed electronically by')).toBeGreaterThan(text.indexOf('full, last'));
  });

  test('line ends stay, in every spelling of them', async () => {
    const text = await textOf(
      await logbookEntry({
        ...ENTRY,
        entry: { ...ENTRY.entry, description: 'one\r\ntwo\rthree\n\nfour\u2028five' },
      }),
    );
    expect(text).toContain('one two three four five');
  });

  test('words from right to left are there, in letters of their own', async () => {
    const text = await textOf(
      await logbookEntry({ ...ENTRY, entry: { ...ENTRY.entry, description: 'wheel שלום مرحبا' } }),
    );
    expect(text).toContain('שלום');
    expect(text).toContain('مرحبا');
  });

  test('a letter that the font lacks, or that cannot be seen, is printed by its number', async () => {
    const text = await textOf(
      await logbookEntry({ ...ENTRY, entry: { ...ENTRY.entry, description: '🛩 日 a\u202eb a\u0007b' } }),
    );
    expect(text).toContain('[U+1F6E9] [U+65E5] a[U+202E]b a[U+0007]b');
  });

  test('what the font can draw stays as it was written', () => {
    expect(drawable('Ł\tx', () => true)).toBe('Ł    x');
    expect(drawable('Ł', () => false)).toBe('[U+0141]');
  });

  test('file names are letters, digits and dashes, whatever the registration holds', () => {
    expect(fileName('N0"\r\nX: y/../z', 'entry', 'ABCDEF-1')).toBe('N0-X-y-z-entry-ABCDEF.pdf');
  });
});

const INSPECTION: InspectionPaper = {
  ...FRAME,
  fileName: 'x.pdf',
  kind: 'annual',
  extent: 'Whole aircraft by the checklist.',
  checklist: 'Maker’s inspection list, revision 7',
  runUp: 'idle: 700 rpm',
  parts: [
    {
      part: 'airframe',
      title: 'Annual inspection, airframe',
      description: 'Airframe opened and looked at.',
      references: null,
      performedBy: 'Łukasz Žižka',
      completedOn: '2026-11-24',
      ttisTenths: 54321,
      airworthy: true,
      list: null,
      signature: {
        ...SIGNATURE,
        certificateKind: 'inspection-authorization',
        statement:
          'I certify that this airframe has been inspected and was determined to be in airworthy condition.',
      },
    },
    {
      part: 'powerplant',
      title: 'Annual inspection, engine',
      description: null,
      references: null,
      performedBy: null,
      completedOn: '2026-11-24',
      ttisTenths: 54321,
      airworthy: false,
      list: { dated: '2026-11-24', items: 2 },
      signature: {
        ...SIGNATURE,
        statement:
          'A list of discrepancies and unairworthy items dated 24 Nov 2026 has been provided for the owner or operator.',
      },
    },
  ],
  unsigned: ['propeller'],
};

describe('inspection entries', () => {
  test('one a part, each on its own page, with every part of 43.11(a)', async () => {
    const bytes = await inspectionEntries(INSPECTION);
    expect((await infoOf(bytes)).get('Pages')).toBe('2');
    const airframe = await textOf(bytes, 1);
    for (const words of [
      'Annual inspection', // (a)(1) type
      'Whole aircraft by the checklist.', // (a)(1) extent
      '24 Nov 2026', // (a)(2) date
      '5432.1 h', // (a)(2) total time in service
      'Łukasz Žižka', // (a)(3)
      'M-778899',
      'Mechanic with inspection authorization',
      'determined to be in airworthy condition', // (a)(4)
      'Maker’s inspection list, revision 7', // 43.15(c)(1)
      'idle: 700 rpm', // 43.15(c)(2)
      'not complete. Not signed yet: propeller',
    ]) {
      expect(airframe).toContain(words);
    }
    const engine = await textOf(bytes, 2);
    // (a)(5)
    expect(engine).toContain('Not approved for return to service');
    expect(engine).toContain('dated 24 Nov 2026 has been provided for the owner or operator');
    expect(engine).toContain('A list of 2 items dated 24 Nov 2026 was given to the owner or operator');
    expect(engine).not.toContain('airworthy condition');
  });
});

const LIST: ListPaper = {
  ...FRAME,
  fileName: 'x.pdf',
  kind: 'annual',
  dated: '2026-11-24',
  items: [
    { number: 'W-0100', title: 'Crack in the left wing rib', standing: 'unairworthy', placard: null },
    {
      number: 'W-0101',
      title: 'Landing light dead',
      standing: 'inoperative-placarded',
      placard: 'LANDING LIGHT INOPERATIVE: beside the switch',
    },
  ],
  signature: { ...SIGNATURE, statement: 'These items were found.' },
  supersedes: null,
  supersededBy: null,
};

describe('the list of 43.11(b)', () => {
  test('names the items, is signed and dated, and is given to the owner or operator', async () => {
    const text = await textOf(await discrepancyList(LIST));
    for (const words of [
      'Dated 24 Nov 2026',
      'Quill & Paper Flyers, owner or operator',
      'Crack in the left wing rib',
      'Unairworthy',
      'LANDING LIGHT INOPERATIVE: beside the switch',
      'placarded as 91.213(d)(2) permits',
      'Łukasz Žižka',
      'M-778899',
    ]) {
      expect(text).toContain(words);
    }
  });

  test('a hundred items are all there', async () => {
    const items = Array.from({ length: 100 }, (_, index) => ({
      number: `W-${1000 + index}`,
      title: `Thing no. ${index} of the list`,
      standing: 'unairworthy',
      placard: null,
    }));
    const text = await textOf(await discrepancyList({ ...LIST, items }));
    for (const { number, title } of items) {
      expect(text).toContain(number);
      expect(text).toContain(title);
    }
  });
});

const placard = (wording: string, index = 0): PlacardToPrint => ({
  id: `${index}`,
  wording,
  location: `Beside switch ${index}`,
  writeUp: `W-${index}`,
  title: `Thing ${index}`,
});
const sheetOf = (placards: readonly PlacardToPrint[]) =>
  placardSheet({ ...FRAME, fileName: 'x.pdf', placards });

describe('INOPERATIVE placards', () => {
  test('the rule on the sheet is 50 mm long', async () => {
    const strokes = await strokesOf(await sheetOf([placard('ADF INOPERATIVE')]), 1);
    const rule = strokes.find(({ width, height }) => height < 0.01 && width > 40 && width < 60);
    expect(rule?.width).toBeCloseTo(50, 2);
  });

  test.each([
    ['ADF INOPERATIVE', 60, 15],
    [
      'AUTOPILOT INOPERATIVE, HEADING MODE AND ALTITUDE HOLD, DO NOT ENGAGE IN FLIGHT UNTIL REPAIRED BY THE SHOP',
      90,
      25,
    ],
  ])('%s is %d x %d mm, to half a millimetre, border and cut marks', async (wording, width, height) => {
    const strokes = await strokesOf(await sheetOf([placard(wording)]), 1);
    // The red border's outer edge is where the label is cut.
    const border = strokes.find(({ colour }) => !colour.includes('rgb(0%') && colour.startsWith('rgb(69'));
    expect(border).toBeDefined();
    expect(Math.abs((border?.width ?? 0) + (border?.stroke ?? 0) - width)).toBeLessThan(0.5);
    expect(Math.abs((border?.height ?? 0) + (border?.stroke ?? 0) - height)).toBeLessThan(0.5);
    const marks = strokes.filter(({ stroke }) => stroke < 0.12);
    expect(marks).toHaveLength(8);
    const across = marks.filter((mark) => mark.width < 0.01).map(({ left }) => left);
    const down = marks.filter((mark) => mark.height < 0.01).map(({ top }) => top);
    expect(Math.abs(Math.max(...across) - Math.min(...across) - width)).toBeLessThan(0.5);
    expect(Math.abs(Math.max(...down) - Math.min(...down) - height)).toBeLessThan(0.5);
  });

  test('the words lie inside the label, and where it goes outside of it', async () => {
    const bytes = await sheetOf([placard('ADF INOPERATIVE')]);
    const border = (await strokesOf(bytes, 1)).find(({ colour }) => colour.startsWith('rgb(69'));
    const boxes = await boxesOf(bytes, 1);
    const inside = boxes.filter(
      ({ left, right, top, bottom }) =>
        border &&
        left >= border.left &&
        right <= border.left + border.width &&
        top >= border.top &&
        bottom <= border.top + border.height,
    );
    expect(inside.map(({ word }) => word)).toEqual(['ADF', 'INOPERATIVE']);
    expect((await textOf(bytes)).match(/Goes: Beside switch 0/)).not.toBeNull();
  });

  test('many flow to a second sheet, each with its own check rule', async () => {
    const many = Array.from({ length: 17 }, (_, index) => placard(`ITEM${index} INOPERATIVE`, index));
    const bytes = await sheetOf(many);
    expect((await infoOf(bytes)).get('Pages')).toBe('2');
    const text = await textOf(bytes);
    for (const { wording, location } of many) {
      expect(text).toContain(wording);
      expect(text).toContain(location);
    }
    for (const page of [1, 2]) {
      const strokes = await strokesOf(bytes, page);
      expect(strokes.some(({ width, height }) => height < 0.01 && Math.abs(width - 50) < 0.1)).toBe(true);
    }
  });

  test('a wording longer than any label is given a higher one; no word of it is lost', async () => {
    const wording = Array.from({ length: 200 }, (_, index) => `WORD${index}`).join(' ');
    const bytes = await sheetOf([placard(wording)]);
    const text = await textOf(bytes);
    for (const word of wording.split(' ')) expect(text).toContain(word);
    const border = (await strokesOf(bytes, 1)).find(({ colour }) => colour.startsWith('rgb(69'));
    expect(border?.height).toBeGreaterThan(25);
  });

  test('one word wider than the label, emoji and new lines do not break it', async () => {
    const text = await textOf(await sheetOf([placard('W'.repeat(120)), placard('OFF\n🛩\nINOP', 1)]));
    expect(text.match(/W/g)?.length).toBeGreaterThanOrEqual(120);
    expect(text).toContain('OFF [U+1F6E9] INOP');
  });

  test('an aircraft without one says so', async () => {
    expect(await textOf(await sheetOf([]))).toContain('No deferral of this aircraft has a placard.');
  });
});

const DEFERRALS: DeferralListPaper = {
  ...FRAME,
  fileName: 'x.pdf',
  ttisTenths: null,
  deferrals: [
    {
      number: 'W-0045',
      title: 'Landing light dead',
      placards: [{ wording: 'LANDING LIGHT INOPERATIVE', location: 'Beside the switch', placed: false }],
      basis: '14 CFR 91.213(d), without a minimum equipment list',
      how: 'Deactivated: breaker collared',
      barred: 'Night VFR, for hire',
      limits: ['Day only. (14 CFR 91.205(c)(4))'],
      recordedOn: '2026-11-19',
      ends: ['Repaired at the next annual. (14 CFR 91.405(c))'],
      signedBy: 'Łukasz Žižka',
      certificateKind: 'mechanic',
      certificateNumber: 'M-778899',
      signedOn: '2026-11-20',
      carriedOver: null,
    },
  ],
  watches: [
    {
      number: 'W-0050',
      title: 'Nick in blade 1',
      measured: '0.012 in',
      limit: 'not more than 0.030 in',
      source: 'Propeller manual',
      signedBy: 'Pim Castlewick',
      certificateKind: 'mechanic',
      certificateNumber: 'M-1',
      signedOn: '2026-11-21',
    },
  ],
  other: [{ number: 'W-0060', title: 'Brake leak', standing: 'Nobody has judged it: it grounds.' }],
};

test('the list to carry aboard: every live deferral, every watch, and what is neither', async () => {
  const text = await textOf(await deferralList(DEFERRALS));
  for (const words of [
    'W-0045: Landing light dead',
    'LANDING LIGHT INOPERATIVE',
    'NOT IN PLACE when this was printed',
    '14 CFR 91.213(d)',
    'Night VFR, for hire',
    'Day only. (14 CFR 91.205(c)(4))',
    '19 Nov 2026',
    'Repaired at the next annual. (14 CFR 91.405(c))',
    'Łukasz Žižka, Mechanic, number M-778899, 20 Nov 2026',
    '0.012 in',
    'not more than 0.030 in',
    'W-0060 Brake leak. Nobody has judged it: it grounds.',
    'A decision aid, not an approval.',
    'Total time in service not stated',
    'As of 25 Nov 2026, 09:00 CST',
  ]) {
    expect(text).toContain(words);
  }
});

describe('facts of a malfunction', () => {
  const facts = withGaps({
    madeAt: FRAME.madeAt,
    writeUp: 'W-0045',
    operator: 'Quill & Paper Flyers',
    aircraft: { registration: 'N0PAPER', type: 'Foxglove 160', serial: 'INVENTED-9', totalTimeHours: null },
    engine: null,
    propeller: null,
    system: { code: '3340', title: 'Exterior Lighting' },
    part: {
      name: 'lamp',
      number: 'L-1',
      serial: null,
      condition: 'inoperative',
      location: 'left wing',
      totalTimeHours: null,
      timeSinceOverhaulHours: null,
    },
    foundOn: '2026-11-19',
    foundDuring: null,
    description: `Does not light. ${LETTERS}`,
    done: ['20 Nov 2026, Łukasz Žižka: replaced.'],
    submitter: { name: 'Łukasz Žižka', organisation: 'Quill & Paper Flyers' },
  });

  test('what nobody has stated is null and named, never guessed', () => {
    expect(facts.notStated).toEqual([
      'aircraft.totalTimeHours',
      'engine',
      'propeller',
      'part.serial',
      'part.totalTimeHours',
      'part.timeSinceOverhaulHours',
      'foundDuring',
    ]);
    expect(malfunctionFacts.parse(JSON.parse(JSON.stringify(facts)))).toEqual(facts);
  });

  test('a word too many or hours as a number do not fit the form', () => {
    expect(malfunctionFacts.safeParse({ ...facts, guess: 1 }).success).toBe(false);
    const asNumber = { ...facts, aircraft: { ...facts.aircraft, totalTimeHours: 12.5 } };
    expect(malfunctionFacts.safeParse(asNumber).success).toBe(false);
  });

  test('on paper the same facts, and the gaps', async () => {
    const text = await textOf(await malfunctionPaper({ facts }));
    for (const words of [
      'JASC 3340 Exterior Lighting',
      'lamp',
      LETTERS,
      'Engine not stated',
      'part.timeSinceOverhaulHours',
      'This is no form of any authority',
      '19 Nov 2026',
    ]) {
      expect(text).toContain(words);
    }
  });
});
