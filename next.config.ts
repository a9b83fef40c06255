import type { NextConfig } from 'next';

const headers = [
  { key: 'X-Content-Type-Options', value: 'nosniff' },
  { key: 'Referrer-Policy', value: 'same-origin' },
  { key: 'X-Frame-Options', value: 'DENY' },
  { key: 'Content-Security-Policy', value: "frame-ancestors 'none'; base-uri 'self'; form-action 'self'" },
];

const config: NextConfig = {
  poweredByHeader: false,
  devIndicators: false,
  typedRoutes: false,
  // Programs of the machine, and drivers that load their parts late: bundling breaks them.
  serverExternalPackages: ['@node-rs/argon2', 'sharp', 'pg', '@prisma/adapter-pg'],
  // Lock files above this folder are somebody else's.
  turbopack: { root: import.meta.dirname },
  outputFileTracingRoot: import.meta.dirname,
  headers: () => Promise.resolve([{ source: '/:path*', headers }]),
};

export default config;
