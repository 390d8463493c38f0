import { resolve } from 'node:path'
import { z } from 'zod'
import { certificateEn } from '#lib/words/house/certificate-en.ts'
import { houseWords as words } from '#lib/words/house/house-en.ts'
import type { CertificateFiles } from '#server/http/certificate.ts'

const hostName = /^[a-z0-9]([a-z0-9.-]*[a-z0-9])?(:\d{1,5})?$/i

const path = z.string().refine((text) => !text.includes('\0') && text.trim() !== '')

/** Everything the environment can set: how it is checked, its default, and what it must be. */
const table = {
  PORT: {
    schema: z
      .string()
      .regex(/^\d{1,5}$/)
      .transform(Number)
      .pipe(z.number().max(65_535)),
    otherwise: '4321',
    is: words.portIs,
  },
  HOST: {
    schema: z.string().regex(/^[0-9a-z.:-]+$/i),
    otherwise: '0.0.0.0',
    is: words.hostIs,
  },
  LEVEL_SCOOP_DATA: {
    schema: path,
    otherwise: 'data',
    is: words.dataIs,
  },
  LEVEL_SCOOP_CERT: {
    schema: z.literal('').or(path),
    otherwise: '',
    is: words.fileIs,
  },
  LEVEL_SCOOP_KEY: {
    schema: z.literal('').or(path),
    otherwise: '',
    is: words.fileIs,
  },
  LEVEL_SCOOP_HOSTS: {
    schema: z
      .string()
      .transform((list) => list.split(',').map((name) => name.trim().toLowerCase()))
      .transform((names) => names.filter((name) => name !== ''))
      .pipe(z.array(z.string().regex(hostName))),
    otherwise: '',
    is: words.hostsIs,
  },
  NODE_ENV: {
    schema: z.enum(['production', 'development', 'test']),
    otherwise: 'production',
    is: words.modeIs,
  },
  LEVEL_SCOOP_LOG: {
    schema: z.enum(['fatal', 'error', 'warn', 'info', 'debug', 'trace', 'silent']),
    otherwise: 'warn',
    is: words.logIs,
  },
  LEVEL_SCOOP_SCREENS: {
    schema: z.enum(['on', 'off']),
    otherwise: 'on',
    is: words.screensIs,
  },
} as const

export interface Config {
  /** 0 to 65535; 0 takes any free port. */
  readonly port: number
  readonly host: string
  /** Absolute path. */
  readonly dataFolder: string
  /** Lower-case names, some with a port, that the server answers to beside its own. */
  readonly extraHosts: readonly string[]
  /** For https; null serves plain http. */
  readonly certificate: CertificateFiles | null
  readonly development: boolean
  readonly logLevel: 'fatal' | 'error' | 'warn' | 'info' | 'debug' | 'trace' | 'silent'
  /** False starts the rail, sockets and /health without any page. */
  readonly screens: boolean
}

export type ConfigRead =
  | { readonly ok: true; readonly config: Config }
  | { readonly ok: false; readonly problems: readonly string[] }

/**
 * Reads the environment. An empty variable counts as unset; a relative data folder lies in `base`.
 * @returns the settings, or one sentence for each variable that won't do
 */
export const readConfig = (
  environment: Readonly<Record<string, string | undefined>>,
  base: string,
): ConfigRead => {
  const problems: string[] = []
  const read = <Output>(
    name: keyof typeof table,
    row: { schema: z.ZodType<Output>; otherwise: string; is: string },
  ): Output => {
    const value = environment[name] || row.otherwise
    const parsed = row.schema.safeParse(value)
    if (parsed.success) return parsed.data
    problems.push(words.setting(name, value, row.is))
    return row.schema.parse(row.otherwise)
  }
  const cert = read('LEVEL_SCOOP_CERT', table.LEVEL_SCOOP_CERT)
  const key = read('LEVEL_SCOOP_KEY', table.LEVEL_SCOOP_KEY)
  if (cert !== '' && key === '')
    problems.push(certificateEn.onlyOne('LEVEL_SCOOP_CERT', 'LEVEL_SCOOP_KEY'))
  if (key !== '' && cert === '')
    problems.push(certificateEn.onlyOne('LEVEL_SCOOP_KEY', 'LEVEL_SCOOP_CERT'))
  const config: Config = {
    port: read('PORT', table.PORT),
    host: read('HOST', table.HOST),
    dataFolder: resolve(base, read('LEVEL_SCOOP_DATA', table.LEVEL_SCOOP_DATA)),
    extraHosts: read('LEVEL_SCOOP_HOSTS', table.LEVEL_SCOOP_HOSTS),
    certificate:
      cert === '' || key === '' ? null : { cert: resolve(base, cert), key: resolve(base, key) },
    development: read('NODE_ENV', table.NODE_ENV) === 'development',
    logLevel: read('LEVEL_SCOOP_LOG', table.LEVEL_SCOOP_LOG),
    screens: read('LEVEL_SCOOP_SCREENS', table.LEVEL_SCOOP_SCREENS) === 'on',
  }
  return problems.length === 0 ? { ok: true, config } : { ok: false, problems }
}
