import { useCallback, useEffect, useState } from 'react'
import type { AheadAnswer } from '#lib/rooms/prep/views/ahead.ts'

export type Ahead =
  | { readonly is: 'looking' }
  | { readonly is: 'lost' }
  /** The server's code: this device isn't the lead's, or there is no station. */
  | { readonly is: 'refused'; readonly code: string }
  | { readonly is: 'there'; readonly answer: AheadAnswer }

export interface AheadAsked {
  readonly guests: number | null
  /** Minutes of the day. */
  readonly opens: number
  readonly closes: number
}

const PATIENCE_MS = 6_000
/** While somebody taps guests up, nothing is asked. */
const SETTLE_MS = 250

const isAnswer = (value: unknown): value is AheadAnswer =>
  typeof value === 'object' && value !== null && 'wanted' in value && 'station' in value

const codeOf = (value: unknown): string =>
  typeof value === 'object' && value !== null && 'code' in value ? String(value.code) : 'failed'

export const askAhead = async ({ guests, opens, closes }: AheadAsked): Promise<Ahead> => {
  const station = new URLSearchParams(location.search).get('station')
  const asked = new URLSearchParams({
    ...{ opens: String(opens), closes: String(closes) },
    ...(station === null ? {} : { station }),
    ...(guests === null ? {} : { guests: String(guests) }),
  })
  try {
    const response = await fetch(`/plan/ahead?${asked}`, {
      cache: 'no-store',
      signal: AbortSignal.timeout(PATIENCE_MS),
    })
    const answer: unknown = await response.json()
    return isAnswer(answer) ? { is: 'there', answer } : { is: 'refused', code: codeOf(answer) }
  } catch {
    return { is: 'lost' }
  }
}

/** The day ahead as the server reckons it; what was answered before stays while another is asked. */
export const useAhead = (asked: AheadAsked): Ahead & { readonly again: () => void } => {
  const [ahead, setAhead] = useState<Ahead>({ is: 'looking' })
  const { guests, opens, closes } = asked
  const look = useCallback(async () => {
    const next = await askAhead({ guests, opens, closes })
    setAhead((before) => (next.is === 'lost' && before.is === 'there' ? before : next))
  }, [guests, opens, closes])
  useEffect(() => {
    const timer = setTimeout(() => void look(), SETTLE_MS)
    return () => clearTimeout(timer)
  }, [look])
  return { ...ahead, again: () => void look() }
}
