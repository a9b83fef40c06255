/** The parts of the proof, in the order they run: what is quick to fail comes first, what wants a quiet machine last. */
export interface Part {
  /** Its file in this folder, without the ending. */
  readonly name: string;
  readonly title: string;
  /** Minutes after which it is stopped and counts as not good. */
  readonly bound: number;
}

export const PARTS: readonly Part[] = [
  { name: 'suites', title: 'Isolation, attacks and doubt', bound: 30 },
  { name: 'packages', title: 'Packages with known weaknesses', bound: 2 },
  { name: 'backup', title: 'Backup and restore', bound: 8 },
  { name: 'faults', title: 'Faults under write load', bound: 15 },
  { name: 'two-servers', title: 'Two servers on one database', bound: 15 },
  { name: 'mutation', title: 'Mutations of the rules', bound: 20 },
  { name: 'rules-speed', title: 'The rules beside a general library', bound: 8 },
  { name: 'scale', title: 'Scale', bound: 20 },
];
