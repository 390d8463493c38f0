import { readFile } from 'node:fs/promises'
import { z } from 'zod'

/** Milliseconds. Where nobody listens that is answered at once; a busy machine may take long. */
const ANSWERS_WITHIN_MS = 30_000

const healthSchema = z.object({ scriptsToken: z.string() })

/** Where a server on this machine keeps the token for scripts; null where it doesn't say. */
const placeAt = async (url: string): Promise<string | null> => {
  try {
    const answer = await fetch(new URL('/health', url), {
      signal: AbortSignal.timeout(ANSWERS_WITHIN_MS),
    })
    const health = healthSchema.safeParse(await answer.json())
    return health.success ? health.data.scriptsToken : null
  } catch {
    return null
  }
}

/**
 * The token for scripts of a running server: out of the file that is named, or out of the data folder
 * of a server on this machine. Null where there is none, or only its owner may read it.
 */
export const scriptsToken = async (url: string, file?: string): Promise<string | null> => {
  const place = file ?? (await placeAt(url))
  if (place === null) return null
  return readFile(place, 'utf8').then(
    (text) => text.trim(),
    () => null,
  )
}
