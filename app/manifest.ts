import type { MetadataRoute } from 'next'

/** What a phone needs to keep Lidsong among its own things. */
export default function manifest(): MetadataRoute.Manifest {
  return {
    name: 'Lidsong',
    short_name: 'Lidsong',
    description: 'Canning days with your neighbours, from the plan to the traced jar.',
    start_url: '/',
    display: 'standalone',
    background_color: '#eef2f1',
    theme_color: '#101e29',
    icons: [{ src: '/icon.svg', sizes: 'any', type: 'image/svg+xml' }],
  }
}
