import { type Metadata, type Viewport } from 'next';
import { type ReactNode } from 'react';
import { languageAsked } from './_words/words';
import { WordsProvider } from './_words/words-provider';
import './globals.css';

export const metadata: Metadata = {
  title: { default: 'Wheelchock', template: '%s · Wheelchock' },
  description: 'From a walkaround finding to a signed-off aircraft, with the paragraph behind every line.',
  robots: { index: false, follow: false },
};

export const viewport: Viewport = {
  width: 'device-width',
  initialScale: 1,
  viewportFit: 'cover',
  themeColor: [
    { media: '(prefers-color-scheme: light)', color: '#2c3138' },
    { media: '(prefers-color-scheme: dark)', color: '#0c0e11' },
  ],
};

export default async function RootLayout({ children }: { children: ReactNode }) {
  const language = await languageAsked();
  return (
    <html lang={language ?? 'en'} suppressHydrationWarning>
      <body>
        <WordsProvider language={language}>{children}</WordsProvider>
      </body>
    </html>
  );
}
