import { type RefObject, useLayoutEffect, useRef, useState } from 'react'

export interface Shape {
  /** How many times as wide as high. */
  readonly aspect: number
  /** CSS pixels. */
  readonly height: number
}

/** The shape of a box, now and whenever it changes; square until it is measured. */
export const useShape = (): readonly [RefObject<HTMLDivElement | null>, Shape] => {
  const box = useRef<HTMLDivElement>(null)
  const [shape, setShape] = useState<Shape>({ aspect: 1, height: 1 })
  useLayoutEffect(() => {
    const at = box.current
    if (!at) return
    const measure = () => {
      const height = Math.max(1, at.clientHeight)
      setShape({ aspect: at.clientWidth / height, height })
    }
    measure()
    const watch = new ResizeObserver(measure)
    watch.observe(at)
    return () => watch.disconnect()
  }, [])
  return [box, shape]
}
