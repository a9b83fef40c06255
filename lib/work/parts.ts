import { z } from 'zod';
import { writtenWords } from '../access/written-words';
import { filled, said } from '../words/said';

/** A part that was fitted or taken out, as the entry names it. */
export interface PartLine {
  readonly did: 'fitted' | 'removed';
  readonly name: string;
  /** The maker's part number. */
  readonly number: string;
  readonly serial: string | null;
  /** Batch or lot. */
  readonly batch: string | null;
  /** In words, because oil is poured and bolts are counted: "2", "6 qt". */
  readonly quantity: string;
  /** The paper it came with: an 8130-3 tag, a certificate of conformity, an invoice. */
  readonly release: string | null;
}

const maySay = (what: string) =>
  z
    .string()
    .trim()
    .max(100, filled(said('{what} can have 100 characters at most.'), { what }))
    .nullish()
    .transform((typed) => typed || null);

/** One line of parts as it is typed. Name, part number and how many are needed; serial, batch and paper are given if there. */
export const partInput = z.object({
  did: z.enum(['fitted', 'removed'], said('Say whether it was fitted or removed.')),
  name: writtenWords(said('The name of the part'), 120),
  number: writtenWords(said('The part number'), 60),
  serial: maySay('The serial number'),
  batch: maySay('The batch'),
  quantity: writtenWords(said('How many'), 30),
  release: maySay('The release document'),
});

/** The parts of an entry; more than fifty lines belong on a list that the entry refers to. */
export const partsInput = z.array(partInput).max(50, said('Fifty lines at most. Refer to a list for more.'));

/** Parts as a row keeps them; none for a row that was written before they were asked for. */
export function partsOf(json: unknown): readonly PartLine[] {
  const read = z.array(partInput).safeParse(json ?? []);
  return read.success ? read.data : [];
}

/** One part in a line of words: "fitted: tube, part no. 92-500-6, batch L7, quantity 1". */
export function partInWords(part: PartLine): string {
  const said = [
    `${part.did}: ${part.name}`,
    `part no. ${part.number}`,
    part.serial && `serial ${part.serial}`,
    part.batch && `batch ${part.batch}`,
    `quantity ${part.quantity}`,
    part.release && `release ${part.release}`,
  ];
  return said.filter(Boolean).join(', ');
}
