import type { NextConfig } from 'next';
import { AIRCRAFT_ID, SHELL_PAGE, SHELL_SCREENS } from './app/ramp/_worker/shell-paths';

const headers = [
  { key: 'X-Content-Type-Options', value: 'nosniff' },
  { key: 'Referrer-Policy', value: 'same-origin' },
  { key: 'X-Frame-Options', value: 'DENY' },
  { key: 'Content-Security-Policy', value: "frame-ancestors 'none'; base-uri 'self'; form-action 'self'" },
];

/** Whatever is in a stored photo, the browser runs none of it. Set here, since this list outranks a route's own headers. */
const photoPolicy = {
  key: 'Content-Security-Policy',
  value: "default-src 'none'; frame-ancestors 'none'; sandbox",
};

const config: NextConfig = {
  poweredByHeader: false,
  devIndicators: false,
  typedRoutes: false,
  // A file of flights may have 1 MB (lib/flights/import/schema.ts), and its quotation marks are sent escaped.
  experimental: { serverActions: { bodySizeLimit: '3mb' } },
  // Programs of the machine, and drivers that load their parts late: bundling breaks them.
  serverExternalPackages: [
    '@node-rs/argon2',
    'sharp',
    'pg',
    'pg-boss',
    '@prisma/adapter-pg',
    'esbuild',
    'pino',
    '@opentelemetry/sdk-node',
    '@opentelemetry/exporter-trace-otlp-proto',
  ],
  // Lock files above this folder are somebody else's.
  turbopack: { root: import.meta.dirname },
  outputFileTracingRoot: import.meta.dirname,
  headers: () =>
    Promise.resolve([
      { source: '/:path*', headers },
      { source: '/api/photos/:id', headers: [photoPolicy] },
      // Proofs hold whatever somebody scanned, and are only ever saved.
      { source: '/api/proofs/:id', headers: [photoPolicy] },
      // The way in stands behind a # in the address; nothing on this page is to be told where it was opened from.
      { source: '/join', headers: [{ key: 'Referrer-Policy', value: 'no-referrer' }] },
      // Its key stands in the address, which is told to nobody. This list outranks the answer's own headers.
      { source: '/api/calendar/:path*', headers: [{ key: 'Referrer-Policy', value: 'no-referrer' }] },
      // A worker kept by something in between would keep phones on an old version.
      { source: '/serwist/:path*', headers: [{ key: 'Cache-Control', value: 'no-cache' }] },
    ]),
  // Screens that run on the phone, online and offline alike, are one page that reads its address.
  rewrites: () =>
    Promise.resolve({
      beforeFiles: [
        {
          source: `/ramp/:aircraftId(${AIRCRAFT_ID})/:screen(${SHELL_SCREENS.join('|')})`,
          destination: SHELL_PAGE,
        },
      ],
      afterFiles: [],
      fallback: [],
    }),
};

export default config;
