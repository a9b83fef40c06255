import { type Metadata, type Viewport } from 'next';
import { type ReactNode } from 'react';
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

export default function RootLayout({ children }: { children: ReactNode }) {
  return (
    <html lang="en">
      <body>{children}</body>
    </html>
  );
}
