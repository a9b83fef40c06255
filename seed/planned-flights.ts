/** A flight that is planned when the demo is loaded: on one of the coming days at a local time of the aircraft's base. */
export interface PlannedFlightPlan {
  readonly aircraft: string;
  /** 1 is tomorrow. */
  readonly inDays: number;
  readonly departs: string;
  readonly minutes: number;
  readonly hours: string;
  readonly words: string;
  readonly pilot?: string;
  readonly by: string;
}

/** Flights of the next two days. N043QB and N054TM may not fly as they stand, so the bench takes them up first. */
export const PLANNED_FLIGHTS: readonly PlannedFlightPlan[] = [
  {
    aircraft: 'N043QB',
    inDays: 1,
    departs: '09:00',
    minutes: 90,
    hours: '1.2',
    words: 'Lesson, traffic pattern',
    pilot: 'ines',
    by: 'tess',
  },
  {
    aircraft: 'N041QB',
    inDays: 1,
    departs: '10:00',
    minutes: 75,
    hours: '1.1',
    words: 'Lesson, slow flight',
    pilot: 'ines',
    by: 'tess',
  },
  {
    aircraft: 'N054TM',
    inDays: 1,
    departs: '13:30',
    minutes: 120,
    hours: '1.8',
    words: 'Rental, round the lake',
    pilot: 'ruth',
    by: 'tess',
  },
  {
    aircraft: 'N042QB',
    inDays: 1,
    departs: '15:00',
    minutes: 70,
    hours: '1.0',
    words: 'Student solo',
    pilot: 'sam',
    by: 'tess',
  },
  {
    aircraft: 'N061QB',
    inDays: 2,
    departs: '08:30',
    minutes: 180,
    hours: '2.6',
    words: 'Rental, away for the day',
    pilot: 'gil',
    by: 'gil',
  },
  {
    aircraft: 'N041QB',
    inDays: 2,
    departs: '11:00',
    minutes: 75,
    hours: '1.1',
    words: 'Lesson, nobody named yet',
    by: 'tess',
  },
];
