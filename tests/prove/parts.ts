/** The parts of the proof, in the order they run: what is quick to fail comes first, what wants a quiet machine last. */
export interface Part {
  /** Its file in this folder, without the ending. */
  readonly name: string;
  readonly title: string;
  /** Minutes after which it is stopped and counts as not good. */
  readonly bound: number;
}

/** What takes longer when all of it is asked for (the heads of the two files say how). */
const isWholeScale = process.env['WHEELCHOCK_SCALE'] === 'full';
const isWholeMutation = process.env['WHEELCHOCK_MUTATION'] === 'all';

export const PARTS: readonly Part[] = [
  { name: 'suites', title: 'Isolation, attacks and doubt', bound: 30 },
  { name: 'packages', title: 'Packages with known weaknesses', bound: 2 },
  { name: 'backup', title: 'Backup and restore', bound: 8 },
  { name: 'faults', title: 'Faults under write load', bound: 35 },
  { name: 'two-servers', title: 'Two servers on one database', bound: 45 },
  { name: 'mutation', title: 'Mutations of the rules', bound: isWholeMutation ? 600 : 45 },
  { name: 'rules-speed', title: 'The rules beside a general library', bound: 8 },
  { name: 'scale', title: 'Scale', bound: isWholeScale ? 120 : 20 },
];
