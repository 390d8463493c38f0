import { type RefObject, useLayoutEffect } from 'react'

/** What is said leads as large as there is room for it; the last is the least, and scrolls beyond. */
const SIZES = ['lead', 'full', 'least'] as const

/** Sets the element's `data-size` to the largest at which all of it is in sight. */
export const useFit = (ref: RefObject<HTMLElement | null>): void => {
  useLayoutEffect(() => {
    const element = ref.current
    if (!element) return
    const setSize = () => {
      for (const size of SIZES) {
        element.dataset.size = size
        if (element.scrollHeight <= element.clientHeight) return
      }
    }
    setSize()
    const watch = new ResizeObserver(setSize)
    watch.observe(element)
    return () => watch.disconnect()
  })
}
