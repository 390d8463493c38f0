import { type RefObject, useLayoutEffect, useRef, useState } from 'react'

/** How many times as wide as high a box is, now and whenever it changes. */
export const useShape = <Box extends HTMLElement>(): readonly [RefObject<Box | null>, number] => {
  const box = useRef<Box>(null)
  const [shape, setShape] = useState(1)
  useLayoutEffect(() => {
    const at = box.current
    if (!at) return
    const measure = () => setShape(at.clientWidth / Math.max(1, at.clientHeight))
    measure()
    const watch = new ResizeObserver(measure)
    watch.observe(at)
    return () => watch.disconnect()
  }, [])
  return [box, shape]
}
