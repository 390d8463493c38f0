/** What the screens ask of the house over HTTP; our own server's answers, guarded by the build. */
import type { AccessAnswer, AccessRefusal, OwnDevice } from '#lib/access/http.ts'

/** A server that doesn't answer for so long counts as lost. */
const PATIENCE_MS = 8_000

export interface Refused {
  readonly code: AccessRefusal
  /** Seconds until it may be tried again, where the server says. */
  readonly again?: number
}

/** What whoever is let in is told; the proof itself lies in a cookie. */
export interface LetIn {
  readonly you: OwnDevice
}

const codeOf = (answer: unknown): string | null =>
  typeof answer === 'object' && answer !== null && 'code' in answer ? String(answer.code) : null

const FAILED: Refused = { code: 'failed' }

const ask = async (path: string, init: RequestInit): Promise<unknown> => {
  const response = await fetch(path, {
    ...init,
    cache: 'no-store',
    signal: AbortSignal.timeout(PATIENCE_MS),
  })
  return response.json()
}

/** An address with what the page's own says beside it; what the address says itself stays. */
export const withPage = (path: string, search: string): string => {
  const [bare = path, own = ''] = path.split('?')
  const asked = new URLSearchParams(own)
  for (const [name, value] of new URLSearchParams(search))
    if (!asked.has(name)) asked.append(name, value)
  return asked.size === 0 ? bare : `${bare}?${asked}`
}

/** What stands at an address of the house, for the house and station that this page is of. Never throws. */
export const look = async <Seen extends object>(path: string): Promise<Seen | Refused> => {
  try {
    const answer = await ask(withPage(path, location.search), {})
    return typeof answer === 'object' && answer !== null ? (answer as Seen) : FAILED
  } catch {
    return FAILED
  }
}

/** Asks for something to be done. Never throws. */
export const tell = async <Done extends object>(
  path: string,
  body: object,
): Promise<AccessAnswer<Done>> => {
  try {
    const answer = await ask(path, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    })
    return codeOf(answer) === null ? FAILED : (answer as AccessAnswer<Done>)
  } catch {
    return FAILED
  }
}

export const isRefused = (answer: object): answer is Refused => {
  const code = codeOf(answer)
  return code !== null && code !== 'done'
}
