import { describe, expect, it } from 'vitest';
import { mayApproveHundredHour, mayApproveReturnToService, signersFor } from '../../lib/rules/who-may-sign';
import { mayDetermineNoHazard } from '../../lib/rules/who-may-determine';
import type { WorkToSign } from '../../lib/rules/work-to-sign';
import { inspector, mechanic, ON, person, pilot, RATING, station, work } from '../fixtures/signers';

/**
 * The table "who may sign" of the project's regulation notes, section 9, derived there from 43.3, 43.7, 65.81 to 65.95,
 * 91.411 and 91.413 (eCFR copies of 24 August and 3 September 2026). Rows that depend on the half of the aircraft
 * are asked for each half. Each refused cell names the paragraph that must be among the reasons.
 */
const people = {
  pilot: pilot('private'),
  airframe: mechanic(['airframe']),
  powerplant: mechanic(['powerplant']),
  both: mechanic(['airframe', 'powerplant']),
  inspector: inspector(),
  station: station(),
};
type Column = keyof typeof people;
const COLUMNS = Object.keys(people) as Column[];

type Cell = 'yes' | `no: ${string}`;
interface Row {
  readonly title: string;
  readonly work: WorkToSign;
  readonly cells: Readonly<Record<Column, Cell>>;
}
const PILOT: Cell = 'no: 14cfr43.3(g)';

const ROWS: readonly Row[] = [
  {
    title: 'preventive maintenance, airframe item (A yes within rating)',
    work: work({ kind: 'preventive', preventiveItem: 17 }),
    cells: {
      pilot: 'yes',
      airframe: 'yes',
      powerplant: 'no: 14cfr65.85(a)',
      both: 'yes',
      inspector: 'yes',
      station: 'yes',
    },
  },
  {
    title: 'preventive maintenance, engine item (P yes within rating)',
    work: work({ kind: 'preventive', preventiveItem: 20, part: 'powerplant' }),
    cells: {
      pilot: 'yes',
      airframe: 'no: 14cfr65.87(a)',
      powerplant: 'yes',
      both: 'yes',
      inspector: 'yes',
      station: 'yes',
    },
  },
  {
    title: 'minor airframe repair',
    work: work({}),
    cells: {
      pilot: PILOT,
      airframe: 'yes',
      powerplant: 'no: 14cfr65.85(a)',
      both: 'yes',
      inspector: 'yes',
      station: 'yes',
    },
  },
  {
    title: 'removal and installation of an instrument',
    work: work({ part: 'instrument', swapOnly: true }),
    cells: {
      pilot: PILOT,
      airframe: 'yes',
      powerplant: 'no: 14cfr65.85(a)',
      both: 'yes',
      inspector: 'yes',
      station: 'yes',
    },
  },
  {
    title: 'removal and installation of a radio',
    work: work({ part: 'avionics', swapOnly: true }),
    cells: {
      pilot: PILOT,
      airframe: 'yes',
      powerplant: 'no: 14cfr65.85(a)',
      both: 'yes',
      inspector: 'yes',
      station: 'yes',
    },
  },
  {
    title: 'minor engine repair',
    work: work({ part: 'powerplant' }),
    cells: {
      pilot: PILOT,
      airframe: 'no: 14cfr65.87(a)',
      powerplant: 'yes',
      both: 'yes',
      inspector: 'yes',
      station: 'yes',
    },
  },
  {
    title: 'minor propeller repair (a small nick)',
    work: work({ part: 'propeller' }),
    cells: {
      pilot: PILOT,
      airframe: 'no: 14cfr65.87(a)',
      powerplant: 'yes',
      both: 'yes',
      inspector: 'yes',
      station: 'yes',
    },
  },
  {
    title: 'major airframe repair (A+P may perform, not approve)',
    work: work({ kind: 'major' }),
    cells: {
      pilot: PILOT,
      airframe: 'no: 14cfr65.85(a)',
      powerplant: 'no: 14cfr65.85(a)',
      both: 'no: 14cfr65.85(a)',
      inspector: 'yes',
      station: 'yes',
    },
  },
  {
    title: 'major engine repair',
    work: work({ kind: 'major', part: 'powerplant' }),
    cells: {
      pilot: PILOT,
      airframe: 'no: 14cfr65.87(a)',
      powerplant: 'no: 14cfr65.87(a)',
      both: 'no: 14cfr65.87(a)',
      inspector: 'yes',
      station: 'yes',
    },
  },
  {
    title: 'major propeller repair or overhaul',
    work: work({ kind: 'major', part: 'propeller' }),
    cells: {
      pilot: PILOT,
      airframe: 'no: 14cfr65.81(a)',
      powerplant: 'no: 14cfr65.81(a)',
      both: 'no: 14cfr65.81(a)',
      inspector: 'no: 14cfr65.81(a)',
      station: 'yes',
    },
  },
  {
    title: 'any repair of an instrument',
    work: work({ part: 'instrument' }),
    cells: {
      pilot: PILOT,
      airframe: 'no: 14cfr65.81(a)',
      powerplant: 'no: 14cfr65.81(a)',
      both: 'no: 14cfr65.81(a)',
      inspector: 'no: 14cfr65.81(a)',
      station: 'yes',
    },
  },
  {
    title: 'major repair of an instrument',
    work: work({ part: 'instrument', kind: 'major' }),
    cells: {
      pilot: PILOT,
      airframe: 'no: 14cfr65.81(a)',
      powerplant: 'no: 14cfr65.81(a)',
      both: 'no: 14cfr65.81(a)',
      inspector: 'no: 14cfr65.81(a)',
      station: 'yes',
    },
  },
  {
    title: '100-hour inspection, airframe part',
    work: work({ kind: 'hundred-hour' }),
    cells: {
      pilot: PILOT,
      airframe: 'yes',
      powerplant: 'no: 14cfr65.85(a)',
      both: 'yes',
      inspector: 'yes',
      station: 'yes',
    },
  },
  {
    title: '100-hour inspection, engine and propeller part',
    work: work({ kind: 'hundred-hour', part: 'powerplant' }),
    cells: {
      pilot: PILOT,
      airframe: 'no: 14cfr65.87(a)',
      powerplant: 'yes',
      both: 'yes',
      inspector: 'yes',
      station: 'yes',
    },
  },
  {
    title: 'annual inspection',
    work: work({ kind: 'annual' }),
    cells: {
      pilot: PILOT,
      airframe: 'no: 14cfr65.95(a)(2)',
      powerplant: 'no: 14cfr65.95(a)(2)',
      both: 'no: 14cfr65.95(a)(2)',
      inspector: 'yes',
      station: 'yes',
    },
  },
  {
    title: 'static leak test of 91.411(a)(2)',
    work: work({ kind: 'static-test' }),
    cells: {
      pilot: PILOT,
      airframe: 'yes',
      powerplant: 'no: 14cfr91.411(b)',
      both: 'yes',
      inspector: 'yes',
      station: 'yes',
    },
  },
  {
    title: 'altimeter and altitude reporter test of 91.411',
    work: work({ kind: 'altimeter-transponder-test', part: 'instrument' }),
    cells: {
      pilot: PILOT,
      airframe: 'no: 14cfr91.411(b)',
      powerplant: 'no: 14cfr91.411(b)',
      both: 'no: 14cfr91.411(b)',
      inspector: 'no: 14cfr91.411(b)',
      station: 'yes',
    },
  },
  {
    title: 'transponder test of 91.413',
    work: work({ kind: 'altimeter-transponder-test', part: 'avionics' }),
    cells: {
      pilot: PILOT,
      airframe: 'no: 14cfr91.413(c)',
      powerplant: 'no: 14cfr91.413(c)',
      both: 'no: 14cfr91.413(c)',
      inspector: 'no: 14cfr91.413(c)',
      station: 'yes',
    },
  },
];

describe('who may sign, cell by cell', () => {
  const cells = ROWS.flatMap((row) => COLUMNS.map((column) => ({ row, column, cell: row.cells[column] })));

  it('asks every cell: 11 rows of the table (18 with the halves) by 6 certificates', () => {
    expect(cells).toHaveLength(108);
  });

  it.each(cells.map(({ row, column, cell }) => [row.title, column, cell, row] as const))(
    '%s: %s: %s',
    (_title, column, cell, row) => {
      const ruling = mayApproveReturnToService(people[column], row.work, ON);
      expect(ruling.allowed).toBe(cell === 'yes');
      expect(ruling.under !== null).toBe(cell === 'yes');
      if (cell !== 'yes') {
        const barring = ruling.lines.filter((line) => line.effect === 'bars').map((line) => line.cite);
        expect(barring).toContain(cell.slice(4));
      }
    },
  );

  it('names somebody who could sign for every row', () => {
    for (const row of ROWS) expect(signersFor(row.work).length, row.title).toBeGreaterThan(0);
  });

  it.each(ROWS.map((row) => [row.title, row] as const))(
    'signersFor agrees with the ruling: %s',
    (_title, row) => {
      const who = signersFor(row.work).join('; ');
      const says = {
        pilot: /pilot/.test(who),
        inspector: /inspection authorization/.test(who),
        airframe: /a mechanic with airframe rating/.test(who),
        powerplant: /a mechanic with powerplant rating/.test(who),
        station: /repair station/.test(who),
      };
      expect(says.pilot).toBe(row.cells.pilot === 'yes');
      expect(says.airframe).toBe(row.cells.airframe === 'yes');
      expect(says.powerplant).toBe(row.cells.powerplant === 'yes');
      expect(says.station).toBe(row.cells.station === 'yes');
      if (says.inspector) expect(row.cells.inspector).toBe('yes');
    },
  );
});

describe('the whole 100-hour inspection (65.85(a), 65.87(a))', () => {
  const whole = { aircraftCategory: 'airplane', performedBySigner: true } as const;
  it.each([
    ['airframe alone', people.airframe, false],
    ['powerplant alone', people.powerplant, false],
    ['both ratings', people.both, true],
    ['private pilot', people.pilot, false],
    ['rated repair station', people.station, true],
  ] as const)('%s', (_title, signer, allowed) => {
    expect(mayApproveHundredHour(signer, whole, ON).allowed).toBe(allowed);
  });
});

describe('worked decisions of the regulation notes, section 13', () => {
  it('5: a position light bulb changed by a named private pilot (App A(c)(17), 43.3(g), 43.7(f))', () => {
    const bulb = work({ kind: 'preventive', preventiveItem: 17 });
    const ruling = mayApproveReturnToService(pilot('private'), bulb, ON);
    expect(ruling.allowed).toBe(true);
    expect(ruling.lines.map((line) => line.cite)).toEqual(
      expect.arrayContaining(['14cfr43appA(c)(17)', '14cfr43.7(f)']),
    );
    expect(ruling.under).toEqual({ capacity: 'pilot', certificate: { number: 'X1', kind: 'private pilot' } });
  });

  it('20: an annual by a mechanic whose authorization lapsed on 31 March 2025 (65.92(a), 65.95, 91.409(a))', () => {
    const lapsed = inspector('2025-03-31');
    const annual = mayApproveReturnToService(lapsed, work({ kind: 'annual' }), '2025-04-01');
    expect(annual.allowed).toBe(false);
    expect(annual.lines.map((line) => line.cite)).toContain('14cfr65.92(a)');
    const hundred = { aircraftCategory: 'airplane', performedBySigner: true } as const;
    expect(mayApproveHundredHour(lapsed, hundred, '2025-04-01').allowed).toBe(true);
  });

  it('24: no-hazard determination by a student; instrument disconnect by the mechanic (91.213(d)(3), (4))', () => {
    const student = mayDetermineNoHazard(pilot('student'), RATING, ON);
    expect(student.allowed).toBe(false);
    expect(student.lines[0]?.cite).toBe('14cfr91.213(d)(4)');
    expect(mayDetermineNoHazard(pilot('private'), RATING, ON).allowed).toBe(true);
    expect(mayDetermineNoHazard(mechanic(['airframe']), RATING, ON).allowed).toBe(true);
    const disconnect = work({ part: 'instrument', swapOnly: true });
    expect(mayApproveReturnToService(pilot('private'), disconnect, ON).allowed).toBe(false);
    expect(mayApproveReturnToService(mechanic(['airframe']), disconnect, ON).allowed).toBe(true);
  });

  it('nobody without a certificate signs anything (43.7)', () => {
    for (const row of ROWS) expect(mayApproveReturnToService(person(), row.work, ON).allowed).toBe(false);
  });
});
