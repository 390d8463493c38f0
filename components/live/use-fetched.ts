import { type ComponentType, useEffect, useState } from 'react'

const AGAIN_AFTER_MS = 1_000

/**
 * Fetches a module's part, again where the network dropped, and hands it on once it is there; returns
 * how to stop.
 */
export const fetchAgain = <Part>(
  load: () => Promise<Part>,
  take: (part: Part) => void,
): (() => void) => {
  let timer: ReturnType<typeof setTimeout> | undefined
  let isOver = false
  const fetchIt = () => {
    load().then(
      (loaded) => {
        if (!isOver) take(loaded)
      },
      () => {
        if (!isOver) timer = setTimeout(fetchIt, AGAIN_AFTER_MS)
      },
    )
  }
  fetchIt()
  return () => {
    isOver = true
    clearTimeout(timer)
  }
}

/**
 * A part of a screen that comes beside the service, which it can't draw anything without; null until
 * it is there. `load` has to stay the same one. Asked for again where the network dropped.
 */
export const useFetched = <Props extends object>(
  load: () => Promise<ComponentType<Props>>,
): ComponentType<Props> | null => {
  const [Part, setPart] = useState<ComponentType<Props> | null>(null)
  useEffect(() => fetchAgain(load, (loaded) => setPart(() => loaded)), [load])
  return Part
}
