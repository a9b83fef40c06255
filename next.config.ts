import type { NextConfig } from 'next';
import { AIRCRAFT_ID, SHELL_PAGE, SHELL_SCREENS } from './app/ramp/_worker/shell-paths';

/** Of every answer. Pages get a policy of their own over this one while they are asked for (app/_guard). */
const headers = [
  { key: 'X-Content-Type-Options', value: 'nosniff' },
  { key: 'Referrer-Policy', value: 'same-origin' },
  { key: 'X-Frame-Options', value: 'DENY' },
  { key: 'Cross-Origin-Opener-Policy', value: 'same-origin' },
  { key: 'Cross-Origin-Resource-Policy', value: 'same-origin' },
  // Passkeys and the clipboard are used; a photo is taken by the phone's own camera program, which needs no leave.
  {
    key: 'Permissions-Policy',
    value:
      'accelerometer=(), autoplay=(), camera=(), display-capture=(), encrypted-media=(), fullscreen=(self), geolocation=(), ' +
      'gyroscope=(), magnetometer=(), microphone=(), midi=(), payment=(), usb=(), xr-spatial-tracking=(), ' +
      'clipboard-write=(self), publickey-credentials-create=(self), publickey-credentials-get=(self)',
  },
  policy(
    "default-src 'self'; object-src 'none'; base-uri 'self'; form-action 'self'; frame-ancestors 'none'",
  ),
];

function policy(value: string) {
  return { key: 'Content-Security-Policy', value };
}

/** Answers for programs: nothing in them is a page, whatever a browser makes of them. */
const programPolicy = policy(
  "default-src 'none'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'",
);

/** A chart opened by itself runs nothing and fetches nothing. */
const chartPolicy = policy("default-src 'none'; style-src 'unsafe-inline'; frame-ancestors 'none'");

/** A PDF is drawn by a part of the browser itself, which may need scripts and objects; we made every byte of it. */
const paperPolicy = policy("base-uri 'none'; form-action 'none'; frame-ancestors 'none'");

/** Whatever is in a stored photo, the browser runs none of it. Set here, since this list outranks a route's own headers. */
const photoPolicy = policy("default-src 'none'; frame-ancestors 'none'; sandbox");

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
      { source: '/api/:path*', headers: [programPolicy] },
      { source: '/api/papers/:path*', headers: [paperPolicy] },
      { source: '/api/insight/:path*', headers: [chartPolicy] },
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
