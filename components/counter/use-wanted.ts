import { useState } from 'react'
import { useSend } from '#components/live/crew.tsx'

export interface Wanted {
  readonly isCounted: (id: string) => boolean
  readonly item: (item: string) => void
  /** `item` null: none is chosen. */
  readonly component: (component: string, item: string | null) => void
}

/** Counts what guests wanted and couldn't have, each once while an order is taken. */
export const useWanted = (): Wanted => {
  const send = useSend()
  const [counted, setCounted] = useState<readonly string[]>([])
  const count = async (id: string, of: { component?: string; item?: string }) => {
    if (counted.includes(id)) return
    setCounted((before) => [...before, id])
    const answer = await send({ type: 'wantedGone', ...of })
    if (answer.answer !== 'accepted') setCounted((before) => before.filter((one) => one !== id))
  }
  return {
    isCounted: (id) => counted.includes(id),
    item: (item) => void count(item, { item }),
    component: (component, item) =>
      void count(component, { component, ...(item === null ? {} : { item }) }),
  }
}
