import { format, resolveConfig } from 'prettier';
import { score, sum, type Counts } from './counts';

const PAGE = 'tests/prove/mutation-figures.md';

const row = (name: string, counts: Counts): string =>
  `| ${name} | ${counts.killed + counts.survived} | ${counts.killed} | ${counts.survived} | ${score(counts).toFixed(1)} % |`;

/** The figures of a whole run, by folder. */
export async function figuresPage(files: ReadonlyMap<string, Counts>, command: string): Promise<string> {
  const folders = new Map<string, Counts[]>();
  for (const [path, counts] of files) {
    const folder = path.slice(0, path.lastIndexOf('/'));
    folders.set(folder, [...(folders.get(folder) ?? []), counts]);
  }
  const whole = sum(files.values());
  const text = [
    '# Mutations of the rules',
    '',
    `Written by \`${command}\` on ${new Date().toISOString().slice(0, 10)}: ${files.size} files. A mutation that no test comes by counts as`,
    `not noticed. Left out: ${whole.ignored} mutations, for the reasons in mutation.config.mjs and beside the line.`,
    '',
    '| folder | mutations | noticed | not noticed | score |',
    '| --- | --- | --- | --- | --- |',
    ...[...folders].toSorted().map(([folder, counts]) => row(folder, sum(counts))),
    row('all', whole),
    '',
  ].join('\n');
  return format(text, { ...(await resolveConfig(PAGE)), filepath: PAGE });
}
