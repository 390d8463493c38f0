import { createHash } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'

/** Content-security-policy sources of the inline scripts of a prerendered page. */
export const inlineScriptHashes = (html: string): readonly string[] => {
  const bodies = [...html.matchAll(/<script(?![^>]*\ssrc=)[^>]*>([\s\S]*?)<\/script>/g)]
  const hashes = bodies.map(([, body = '']) => {
    const digest = createHash('sha256').update(body).digest('base64')
    return `'sha256-${digest}'`
  })
  return [...new Set(hashes)]
}

/** Sources by the page's path; the page for unknown paths is under `/_not-found`. */
export type PageHashes = ReadonlyMap<string, readonly string[]>

/**
 * Reads the prerendered pages that `next build` left. Each may turn into the page of a failure, so
 * the scripts of that one are among every page's.
 * @throws where there are none
 */
export const readPageHashes = (nextFolder: string): PageHashes => {
  const folder = join(nextFolder, 'server', 'app')
  const pages = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.html'))
    .map((file) => ({
      path: `/${file.replaceAll('\\', '/').slice(0, -'.html'.length)}`.replace(/^\/index$/, '/'),
      hashes: inlineScriptHashes(readFileSync(join(folder, file), 'utf8')),
    }))
  const ofFailure = pages.find(({ path }) => path === '/_global-error')?.hashes ?? []
  return new Map(pages.map(({ path, hashes }) => [path, [...new Set([...hashes, ...ofFailure])]]))
}

/**
 * The policy of one page: all that isn't named is refused. Sockets are named besides 'self', which
 * older Safari doesn't take for them. Never `upgrade-insecure-requests`: on plain http it blanks
 * every page but localhost's.
 * @param host a Host header that was allowed
 */
export const contentSecurityPolicy = (
  scripts: readonly string[],
  host: string,
  { secure, development }: { readonly secure: boolean; readonly development: boolean },
): string => {
  const script = development ? ["'unsafe-inline'", "'unsafe-eval'"] : scripts
  const style = development ? ["'unsafe-inline'"] : []
  return [
    "default-src 'none'",
    ['script-src', "'self'", ...script].join(' '),
    "script-src-attr 'none'",
    ['style-src', "'self'", ...style].join(' '),
    "img-src 'self'",
    "media-src 'self'",
    "font-src 'self'",
    `connect-src 'self' ${secure ? 'wss' : 'ws'}://${host}`,
    "manifest-src 'self'",
    "object-src 'none'",
    "base-uri 'none'",
    "form-action 'self'",
    "frame-ancestors 'none'",
  ].join('; ')
}

/** What no screen uses: a page that is taken over can't either. */
const NEVER_USED = [
  'accelerometer',
  'camera',
  'display-capture',
  'geolocation',
  'gyroscope',
  'hid',
  'idle-detection',
  'local-fonts',
  'magnetometer',
  'microphone',
  'midi',
  'payment',
  'publickey-credentials-create',
  'publickey-credentials-get',
  'serial',
  'usb',
  'window-management',
  'xr-spatial-tracking',
]

/** On every answer. None that a plain-http address turns against its own pages. */
const PLAIN: Readonly<Record<string, string>> = {
  'X-Content-Type-Options': 'nosniff',
  'X-Frame-Options': 'DENY',
  'Referrer-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Permissions-Policy': NEVER_USED.map((name) => `${name}=()`).join(', '),
}

/** Browsers ignore these on plain http, and complain of them. */
const OF_TLS: Readonly<Record<string, string>> = {
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Embedder-Policy': 'require-corp',
  'Origin-Agent-Cluster': '?1',
}

/**
 * The headers of every answer. No HSTS: it holds for a name's every port, and a tablet that
 * remembers it couldn't come back on the day on which the certificate ran out.
 */
export const headersOf = (secure: boolean): Readonly<Record<string, string>> =>
  secure ? { ...PLAIN, ...OF_TLS } : PLAIN
