import { type ComponentType, useEffect, useState } from 'react'

const AGAIN_AFTER_MS = 1_000

/**
 * A part of a screen that comes beside the service, which it can't draw anything without; null until
 * it is there. `load` has to stay the same one. Asked for again where the network dropped.
 */
export const useFetched = <Props extends object>(
  load: () => Promise<ComponentType<Props>>,
): ComponentType<Props> | null => {
  const [Part, setPart] = useState<ComponentType<Props> | null>(null)
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined
    let isOver = false
    const fetchIt = () => {
      load().then(
        (loaded) => {
          if (!isOver) setPart(() => loaded)
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
  }, [load])
  return Part
}
