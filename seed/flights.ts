import type { FlightPlan } from './stories';

/** Flights that were released, each with the facts of its day. */
export const FLIGHTS: readonly FlightPlan[] = [
  { aircraft: 'N041QB', daysAgo: 315, departs: '10:00', minutes: 75, hours: '1.1', purpose: 'instruction-for-hire', dispatcher: 'tess', pilot: 'ines' },
  { aircraft: 'N052TM', daysAgo: 287, departs: '13:00', minutes: 90, hours: '1.3', purpose: 'private', dispatcher: 'dov', pilot: 'ruth' },
  // By day with the landing light deferred: a limit the dispatcher passed on.
  { aircraft: 'N041QB', daysAgo: 231, departs: '11:00', minutes: 80, hours: '1.2', purpose: 'instruction-for-hire', dispatcher: 'tess', pilot: 'ines' },
  { aircraft: 'N061QB', daysAgo: 190, departs: '09:30', minutes: 110, hours: '1.7', purpose: 'private', to: 'tm', dispatcher: 'tess', pilot: 'gil' },
  { aircraft: 'N042QB', daysAgo: 123, departs: '14:00', minutes: 70, hours: '1.0', purpose: 'student-solo', dispatcher: 'tess', pilot: 'sam' },
  { aircraft: 'N045TM', daysAgo: 81, departs: '10:30', minutes: 85, hours: '1.2', purpose: 'instruction-for-hire', dispatcher: 'dov', pilot: 'dov' },
  { aircraft: 'N051QB', daysAgo: 28, departs: '12:00', minutes: 95, hours: '1.4', purpose: 'private', dispatcher: 'gil', pilot: 'pia' },
  { aircraft: 'N042QB', daysAgo: 3, departs: '13:30', minutes: 75, hours: '1.0', purpose: 'instruction-for-hire', dispatcher: 'tess', pilot: 'ines' },
  { aircraft: 'N041QB', daysAgo: 1, departs: '11:30', minutes: 70, hours: '1.0', purpose: 'instruction-for-hire', dispatcher: 'tess', pilot: 'ines' },
];
