import { useEffect, useState } from 'react'
import type { OnShelf } from '#lib/rooms/shelf/views/hand-over.ts'

/** What was handed over keeps its place so long: what moves up would come under the same finger. */
const KEEPS_PLACE_MS = 2_500

/** Where a build stood until a moment ago. */
export interface Gone {
  readonly name: string
  readonly index: number
  readonly height: number
}

const heightOf = (name: string): number =>
  document.querySelector(`[data-build="${name}"]`)?.getBoundingClientRect().height ?? 0

/** The shelf with the place of what has only just left it. */
export const useKeptPlace = (shelf: readonly OnShelf[]) => {
  const [gone, setGone] = useState<Gone | null>(null)
  useEffect(() => {
    if (!gone) return
    const timer = setTimeout(() => setGone(null), KEEPS_PLACE_MS)
    return () => clearTimeout(timer)
  }, [gone])
  const left = gone && !shelf.some(({ name }) => name === gone.name) ? gone : null
  const places: readonly (OnShelf | Gone)[] = left
    ? [...shelf.slice(0, left.index), left, ...shelf.slice(left.index)]
    : shelf
  return {
    places,
    keep: (name: string): void =>
      setGone({
        name,
        index: shelf.findIndex((one) => one.name === name),
        height: heightOf(name),
      }),
  }
}
