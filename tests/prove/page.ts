/** The page of the proof: one section a part, between two marks; what people wrote around them stays. */
import { format, resolveConfig } from 'prettier';
import { Trouble } from '../../lib/operate/say.mjs';
import type { Part } from './parts';
import type { Row } from './row';
import { asMarkdown } from './table';

export const PAGE = 'docs/proof.md';

const marksOf = ({ name }: Part) => [`<!-- figures of ${name} -->`, `<!-- end of ${name} -->`] as const;

/** `page` with this part's figures in place of those it had. `stamp`: when and where they were measured. */
export async function withFigures(
  page: string,
  part: Part,
  stamp: string,
  rows: readonly Row[],
): Promise<string> {
  const [begin, end] = marksOf(part);
  const [from, to] = [page.indexOf(begin), page.indexOf(end)];
  if (from < 0 || to < from)
    throw new Trouble(`The page of the proof has lost its marks ${begin} and ${end}.`);
  const text = `${page.slice(0, from + begin.length)}\n\n${stamp}\n\n${asMarkdown(rows)}\n\n${page.slice(to)}`;
  return format(text, { ...(await resolveConfig(PAGE)), filepath: PAGE });
}
