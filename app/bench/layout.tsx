import { type ReactNode } from 'react';
import { MoreWords } from '@/app/_words/more-words';

export default function BenchLayout({ children }: { children: ReactNode }) {
  return <MoreWords>{children}</MoreWords>;
}
