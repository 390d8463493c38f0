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
 * The policy of one page. Sockets are named besides 'self', which older Safari doesn't take for
 * them. Never `upgrade-insecure-requests`: on plain http it blanks every page but localhost's.
 * @param host a Host header that was allowed
 */
export const contentSecurityPolicy = (
  scripts: readonly string[],
  host: string,
  development: boolean,
): string => {
  const script = development ? ["'unsafe-inline'", "'unsafe-eval'"] : scripts
  const style = development ? ["'unsafe-inline'"] : []
  return [
    "default-src 'self'",
    ['script-src', "'self'", ...script].join(' '),
    ['style-src', "'self'", ...style].join(' '),
    "img-src 'self' data: blob:",
    "media-src 'self' data: blob:",
    "font-src 'self'",
    `connect-src 'self' ws://${host} wss://${host}`,
    "object-src 'none'",
    "base-uri 'none'",
    "form-action 'self'",
    "frame-ancestors 'none'",
  ].join('; ')
}

/** On every answer. None that a plain-http address turns against its own pages (HSTS, COOP). */
export const plainHeaders: Readonly<Record<string, string>> = {
  'X-Content-Type-Options': 'nosniff',
  'X-Frame-Options': 'DENY',
  'Referrer-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Permissions-Policy': 'camera=(), microphone=(), geolocation=(), payment=(), usb=()',
}
