import NextLink from 'next/link';
import { type ComponentProps } from 'react';
import { Opening } from './opening';

/**
 * A link that fetches nothing before it is pressed. What is shown after a press must be what holds at that moment: a
 * page fetched ahead could show a photo as missing that has just arrived, or a go that is gone. ESLint lets nobody use
 * the framework's own link.
 */
export default function Link({ children, ...props }: Omit<ComponentProps<typeof NextLink>, 'prefetch'>) {
  return (
    <NextLink {...props} prefetch={false}>
      {children}
      <Opening />
    </NextLink>
  );
}
