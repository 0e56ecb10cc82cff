import type { Metadata, Viewport } from 'next'
import localFont from 'next/font/local'
import { cookies } from 'next/headers'
import { connection } from 'next/server'
import type { ReactNode } from 'react'
import { ProducePatterns } from '@/app/_drawings/produce-patterns'
import { SymbolSprite } from '@/app/_drawings/symbol-sprite'
import { TITLE_TEMPLATE } from '@/app/_shell/page-title'
import { THEME_COOKIE } from '@/app/_shell/theme'
import './globals.css'

const slab = localFont({
  src: '../node_modules/@fontsource-variable/hepta-slab/files/hepta-slab-latin-wght-normal.woff2',
  variable: '--font-slab',
  weight: '1 900',
  display: 'swap',
})
const slabMore = localFont({
  src: '../node_modules/@fontsource-variable/hepta-slab/files/hepta-slab-latin-ext-wght-normal.woff2',
  variable: '--font-slab-ext',
  weight: '1 900',
  display: 'swap',
  preload: false,
  adjustFontFallback: false,
  declarations: [{ prop: 'unicode-range', value: 'U+0100-02BA, U+1E00-1E9F, U+1EF2-1EFF' }],
})
const text = localFont({
  src: '../node_modules/@fontsource-variable/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-wght-normal.woff2',
  variable: '--font-text',
  weight: '200 800',
  display: 'swap',
})
const textMore = localFont({
  src: '../node_modules/@fontsource-variable/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-ext-wght-normal.woff2',
  variable: '--font-text-ext',
  weight: '200 800',
  display: 'swap',
  preload: false,
  adjustFontFallback: false,
  declarations: [{ prop: 'unicode-range', value: 'U+0100-02BA, U+1E00-1E9F, U+1EF2-1EFF' }],
})

export const metadata: Metadata = {
  title: { default: 'Lidsong', template: TITLE_TEMPLATE },
  description: 'Neighbours put up food together: plan the day, run it, share it out, and know where every jar is.',
  applicationName: 'Lidsong',
  formatDetection: { telephone: false, date: false, address: false, email: false },
}

export const viewport: Viewport = { width: 'device-width', initialScale: 1, themeColor: '#101e29', colorScheme: 'light dark' }

/** The document around every screen: letters, drawings, and the device's choice of light or dark. */
export default async function RootLayout({ children }: { children: ReactNode }) {
  await connection()
  const isDark = (await cookies()).get(THEME_COOKIE)?.value === 'dark'
  const letters = [slab, slabMore, text, textMore].map((font) => font.variable).join(' ')
  return (
    <html lang="en" className={letters} data-dark={isDark ? '' : undefined}>
      <body>
        <a className="skip" href="#main">
          Skip to the work
        </a>
        <SymbolSprite />
        <ProducePatterns />
        {children}
      </body>
    </html>
  )
}
