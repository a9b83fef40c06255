import { createSerwistRoute } from '@serwist/turbopack';
import { shellFiles } from '../shell-files';

/** Serves the service worker, /serwist/sw.js, made while the site is built. */
export const { dynamic, dynamicParams, revalidate, generateStaticParams, GET } = createSerwistRoute({
  swSrc: 'app/ramp/_worker/worker.ts',
  // Only what the ramp needs is kept on a phone, not the whole site.
  globPatterns: [],
  additionalPrecacheEntries: process.env.NODE_ENV === 'production' ? await shellFiles() : [],
  useNativeEsbuild: true,
  esbuildOptions: { sourcemap: false },
});
