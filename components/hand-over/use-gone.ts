import { useEffect, useState } from 'react'
import type { OnShelf } from '#lib/rooms/shelf/views/hand-over.ts'

/** What was handed over keeps its place so long: what comes next would come under the same finger. */
const KEEPS_PLACE_MS = 1_500

interface Gone {
  readonly name: string
  readonly build: OnShelf
  readonly atEnd: boolean
}

/** What was given out a moment ago; null before it left the shelf, and once it is forgotten. */
export const useGone = (shelf: readonly OnShelf[]) => {
  const [given, setGiven] = useState<Gone | null>(null)
  const gone = given && !shelf.some(({ name }) => name === given.name) ? given : null
  const hasLeft = gone !== null
  useEffect(() => {
    if (!hasLeft) return
    const timer = setTimeout(() => setGiven(null), KEEPS_PLACE_MS)
    return () => clearTimeout(timer)
  }, [hasLeft])
  return {
    gone,
    keep: (build: OnShelf, atEnd: boolean): void => setGiven({ name: build.name, build, atEnd }),
  }
}
