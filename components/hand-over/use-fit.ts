import { type RefObject, useLayoutEffect, useRef } from 'react'

/**
 * Sets an element's `data-fit` to the first of these under which its text isn't cut; to the last one
 * where it is under each.
 *
 * @param text whatever the element's text follows from
 */
export const useFit = <Size extends string>(
  sizes: readonly Size[],
  text: string,
): RefObject<HTMLDivElement | null> => {
  const box = useRef<HTMLDivElement>(null)
  // biome-ignore lint/correctness/useExhaustiveDependencies: another text is measured anew
  useLayoutEffect(() => {
    const at = box.current
    if (!at) return
    const measure = () => {
      for (const size of sizes) {
        at.dataset.fit = size
        if (at.scrollHeight <= at.clientHeight + 1 && at.scrollWidth <= at.clientWidth + 1) return
      }
    }
    measure()
    const watch = new ResizeObserver(measure)
    watch.observe(at)
    return () => watch.disconnect()
  }, [sizes, text])
  return box
}
