/** The user's own certificate and key, read and tried before anything listens. */
import { createPrivateKey, type KeyObject, X509Certificate } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { createSecureContext } from 'node:tls'
import { certificateEn as words } from '#lib/words/house/certificate-en.ts'

export interface CertificateFiles {
  /** Absolute paths of PEM files. */
  readonly cert: string
  readonly key: string
}

export interface Certificate {
  readonly cert: string
  readonly key: string
  /** What stands in nobody's way but is to be told at the start: it ran out, or isn't valid yet. */
  readonly warnings: readonly string[]
}

export type CertificateRead =
  | { readonly ok: true; readonly certificate: Certificate }
  | { readonly ok: false; readonly problem: string }

type ReadFile = (path: string) => string

const read = (path: string): string => readFileSync(path, 'utf8')

/** @throws a sentence as a string's error */
const textOf = (setting: string, path: string, readFile: ReadFile): string => {
  try {
    return readFile(path)
  } catch (problem) {
    const { code = '' } = problem as NodeJS.ErrnoException
    const detail = problem instanceof Error ? problem.message : String(problem)
    throw new Error(words.unreadable(setting, path, code, detail))
  }
}

const certificateOf = (path: string, text: string): X509Certificate => {
  if (/-----BEGIN [A-Z ]*PRIVATE KEY-----/.test(text) && !text.includes('BEGIN CERTIFICATE'))
    throw new Error(words.keyForCertificate(path))
  try {
    return new X509Certificate(text)
  } catch {
    throw new Error(words.notACertificate(path))
  }
}

const keyOf = (path: string, text: string): KeyObject => {
  if (/BEGIN ENCRYPTED PRIVATE KEY|Proc-Type: 4,ENCRYPTED/.test(text))
    throw new Error(words.lockedKey(path))
  try {
    return createPrivateKey(text)
  } catch {
    throw new Error(words.notAKey(path))
  }
}

/**
 * @param now epoch milliseconds, for what ran out
 * @returns what https needs, or a sentence for whoever starts the server
 */
export const readCertificate = (
  files: CertificateFiles,
  now: number,
  readFile: ReadFile = read,
): CertificateRead => {
  try {
    const cert = textOf('LEVEL_SCOOP_CERT', files.cert, readFile)
    const key = textOf('LEVEL_SCOOP_KEY', files.key, readFile)
    const parsed = certificateOf(files.cert, cert)
    if (!parsed.checkPrivateKey(keyOf(files.key, key)))
      return { ok: false, problem: words.notTogether(files.cert, files.key) }
    try {
      createSecureContext({ cert, key, minVersion: 'TLSv1.2' })
    } catch (problem) {
      const detail = problem instanceof Error ? problem.message : String(problem)
      return { ok: false, problem: words.notUsable(files.cert, detail) }
    }
    const warnings = [
      ...(Date.parse(parsed.validTo) < now ? [words.ranOut(files.cert, parsed.validTo)] : []),
      ...(Date.parse(parsed.validFrom) > now ? [words.notYet(files.cert, parsed.validFrom)] : []),
    ]
    return { ok: true, certificate: { cert, key, warnings } }
  } catch (problem) {
    return { ok: false, problem: problem instanceof Error ? problem.message : String(problem) }
  }
}
