import { useEffect } from 'react'
import { fetchLaterParts } from '#components/counter/later-parts.ts'

const AGAIN_AFTER_MS = 3_000
/** Browsers that tell of no idle time wait so long after the first drawing. */
const REST_MS = 300

/** Fetches what the first load left out as soon as the page rests, until all of it is there. */
export const useLaterParts = (): void => {
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined
    let over = false
    const fetchAll = () => {
      fetchLaterParts().catch(() => {
        if (!over) timer = setTimeout(fetchAll, AGAIN_AFTER_MS)
      })
    }
    timer = setTimeout(() => {
      if ('requestIdleCallback' in window)
        requestIdleCallback(fetchAll, { timeout: AGAIN_AFTER_MS })
      else fetchAll()
    }, REST_MS)
    return () => {
      over = true
      clearTimeout(timer)
    }
  }, [])
}
