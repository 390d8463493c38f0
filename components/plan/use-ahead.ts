import { useCallback, useEffect, useState } from 'react'
import type { AheadAnswer } from '#lib/rooms/prep/views/ahead.ts'

export type Ahead =
  | { readonly is: 'looking' }
  | { readonly is: 'lost' }
  /** The server's code: this device isn't the lead's, or there is no station. */
  | { readonly is: 'refused'; readonly code: string }
  | { readonly is: 'there'; readonly answer: AheadAnswer }

export interface AheadAsked {
  /** The planned service whose par is asked for; left away where only its plans are. */
  readonly service?: string
  readonly guests: number | null
  /** Changes with the plan, so that its par is asked for anew. */
  readonly plan?: string
}

const PATIENCE_MS = 6_000
/** While somebody taps guests up, nothing is asked. */
const SETTLE_MS = 250

const isAnswer = (value: unknown): value is AheadAnswer =>
  typeof value === 'object' && value !== null && 'wanted' in value && 'station' in value

const codeOf = (value: unknown): string =>
  typeof value === 'object' && value !== null && 'code' in value ? String(value.code) : 'failed'

export const askAhead = async ({ guests, service }: AheadAsked): Promise<Ahead> => {
  const station = new URLSearchParams(location.search).get('station')
  const asked = new URLSearchParams({
    ...(station === null ? {} : { station }),
    ...(service === undefined ? {} : { service }),
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
  const { guests, service, plan } = asked
  const look = useCallback(async () => {
    const next = await askAhead({ guests, ...(service === undefined ? {} : { service }) })
    setAhead((before) => (next.is === 'lost' && before.is === 'there' ? before : next))
  }, [guests, service])
  // biome-ignore lint/correctness/useExhaustiveDependencies: another plan has another par
  useEffect(() => {
    const timer = setTimeout(() => void look(), SETTLE_MS)
    return () => clearTimeout(timer)
  }, [look, plan])
  return { ...ahead, again: () => void look() }
}
