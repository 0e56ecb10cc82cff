import type { NextConfig } from 'next'

/** Headers that are the same on every answer; proxy.ts adds the content security policy, which changes with each. */
const HEADERS = {
  'Strict-Transport-Security': 'max-age=31536000; includeSubDomains',
  'X-Content-Type-Options': 'nosniff',
  'X-Frame-Options': 'DENY',
  'Permissions-Policy': 'camera=(self), geolocation=(), microphone=()',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Referrer-Policy': 'strict-origin-when-cross-origin',
}

/** A built file is shown as itself by nobody; proxy.ts leaves these out. */
const FILE_POLICY = { 'Content-Security-Policy': "default-src 'none'; frame-ancestors 'none'" }

/** Addresses that hold a secret or a jar's code do not travel to other sites. */
const UNREFERRED = ['/j/:path*', '/invite/:path*', '/sign-in/:path*', '/api/auth/:path*']

const asList = (headers: Record<string, string>) => Object.entries(headers).map(([key, value]) => ({ key, value }))

const config: NextConfig = {
  distDir: process.env.LIDSONG_BUILD_DIR ?? '.next',
  agentRules: false,
  poweredByHeader: false,
  productionBrowserSourceMaps: false,
  serverExternalPackages: ['@node-rs/argon2', 'bwip-js', 'graphile-worker', 'nodemailer', 'pdfkit', 'pg', 'pino'],
  images: { unoptimized: true },
  experimental: { serverActions: { bodySizeLimit: '64kb' } },
  headers: async () => [
    { source: '/:path*', headers: asList(HEADERS) },
    { source: '/_next/static/:path*', headers: asList(FILE_POLICY) },
    ...UNREFERRED.map((source) => ({ source, headers: asList({ 'Referrer-Policy': 'no-referrer' }) })),
  ],
}

export default config
