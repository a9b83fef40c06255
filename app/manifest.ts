import { type MetadataRoute } from 'next';

/**
 * What a phone needs to install the ramp (W3C, Web Application Manifest). The pictures are drawn from app/icon.svg; the
 * maskable one fills its square and keeps the drawing within the inner four fifths, since a phone cuts it to its own shape.
 */
export default function manifest(): MetadataRoute.Manifest {
  return {
    id: '/ramp',
    name: 'Wheelchock',
    short_name: 'Wheelchock',
    description: 'Walkarounds and findings on the ramp, with a signal or without.',
    start_url: '/ramp',
    scope: '/',
    display: 'standalone',
    // --slab and --ground of globals.css.
    theme_color: '#2c3138',
    background_color: '#f2ede3',
    icons: [
      { src: '/icon-192.png', sizes: '192x192', type: 'image/png', purpose: 'any' },
      { src: '/icon-512.png', sizes: '512x512', type: 'image/png', purpose: 'any' },
      { src: '/icon-maskable-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
    ],
  };
}
