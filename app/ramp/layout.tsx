import { type ReactNode } from 'react';
import { UnsentPhotos } from './_parts/unsent-photos';

/** Photos still on their way are told on every page of the ramp; they are sent while one walks on. */
export default function RampLayout({ children }: { children: ReactNode }) {
  return (
    <>
      <UnsentPhotos />
      {children}
    </>
  );
}
