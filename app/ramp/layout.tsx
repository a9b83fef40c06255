import { type ReactNode } from 'react';
import { Keeper } from './_phone/keeper';
import { SentBar } from './_phone/sent-bar';

/** What is sent and what is not is told on every page of the ramp; it is sent while one walks on. */
export default function RampLayout({ children }: { children: ReactNode }) {
  return (
    <>
      <Keeper />
      <SentBar />
      {children}
    </>
  );
}
