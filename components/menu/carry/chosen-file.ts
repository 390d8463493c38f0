/** What a chosen file seems to be, so that it is looked at as that: the server decides. */
import type { TableOf } from '#lib/carry/csv/planned.ts'

/** Empty: what the bytes say themselves. */
export type Encoded = '' | 'windows-1252'

/** Bytes by type, as the server takes them. */
export const MOST_SENT: Readonly<Record<string, number>> = {
  'application/json': 20 * 1_048_576,
  'text/csv': 2 * 1_048_576,
}

export type Seems = 'station' | TableOf

export const seems = async (file: File): Promise<Seems> => {
  const head = (await file.slice(0, 2_000).text()).replaceAll('\u0000', '').trimStart()
  if (head.startsWith('{') || /\.json$/i.test(file.name)) return 'station'
  return /made[\s_-]+with/i.test(head.split('\n')[0] ?? '') ? 'recipes' : 'ingredients'
}
