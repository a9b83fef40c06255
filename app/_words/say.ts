import { cloneElement, createElement, Fragment, type ReactElement, type ReactNode } from 'react';
import { type Translate, type Values } from '@/lib/words/translate';

/**
 * Words with elements in them: `<Say text="Read <b>this</b> at {time}." parts={{ b: <b /> }} values={{ time: <Moment … /> }} />`.
 * A part is drawn around the words between its tags, or as it is for `<b/>`.
 */
export interface SayProps {
  readonly text: string;
  readonly parts?: Readonly<Record<string, ReactElement>>;
  readonly values?: Readonly<Record<string, ReactNode>>;
}

const TAG = /<(\/?)(=?\w+)(\/?)>/g;

export function sayWith(t: Translate, { text, parts = {}, values = {} }: SayProps): ReactNode {
  // A value goes in as a tag of its own (=name), so that nothing a person typed is ever read as a tag. Numbers choose plurals.
  const plain: Record<string, string | number> = {};
  for (const [name, value] of Object.entries(values)) {
    plain[name] = typeof value === 'number' ? value : `<=${name}/>`;
  }
  const open: { part: ReactElement | undefined; drawn: ReactNode[] }[] = [{ part: undefined, drawn: [] }];
  const put = (node: ReactNode) => open.at(-1)?.drawn.push(node);
  const said = t(text, plain satisfies Values);
  let from = 0;
  for (const { 0: tag, 1: closes, 2: name = '', 3: alone, index } of said.matchAll(TAG)) {
    if (index > from) put(said.slice(from, index));
    from = index + tag.length;
    if (name.startsWith('=')) put(values[name.slice(1)]);
    else if (alone) put(parts[name]);
    else if (!closes) open.push({ part: parts[name], drawn: [] });
    else {
      const { part, drawn } = open.length > 1 ? (open.pop() ?? { drawn: [] }) : { drawn: [] };
      put(part ? cloneElement(part, undefined, ...drawn) : createElement(Fragment, null, ...drawn));
    }
  }
  if (from < said.length) put(said.slice(from));
  return createElement(Fragment, null, ...(open[0]?.drawn ?? []));
}
