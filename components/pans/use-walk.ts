import { type RefObject, useEffect, useState, useSyncExternalStore } from 'react'

const PHONE = '(max-width: 700px)'

const watchPhone = (told: () => void): (() => void) => {
  const query = matchMedia(PHONE)
  query.addEventListener('change', told)
  return () => query.removeEventListener('change', told)
}

/** Whether the line is walked pan by pan, one a screen. */
export const useIsPhone = (): boolean =>
  useSyncExternalStore(
    watchPhone,
    () => matchMedia(PHONE).matches,
    () => false,
  )

const placeOf = (line: HTMLElement | null, pan: string): Element | null =>
  line?.querySelector(`[data-notch="${CSS.escape(pan)}"]`) ?? null

export interface Walk {
  /** The pan in sight; null where the whole line is. */
  readonly pan: string | null
  readonly index: number
  go(index: number): void
}

/** Walks the line by swipe or keys. `first`: the pan at which the walk begins. */
export const useWalk = (
  line: RefObject<HTMLDivElement | null>,
  pans: readonly string[],
  { first, isWalked }: { readonly first: string | null; readonly isWalked: boolean },
): Walk => {
  const [index, setIndex] = useState(() => Math.max(0, pans.indexOf(first ?? '')))
  const go = (next: number): void => {
    const to = Math.max(0, Math.min(pans.length - 1, next))
    setIndex(to)
    placeOf(line.current, pans[to] ?? '')?.scrollIntoView({ inline: 'center', block: 'nearest' })
  }
  // biome-ignore lint/correctness/useExhaustiveDependencies: comes back to where it was, and no more
  useEffect(() => {
    if (isWalked) go(index)
  }, [isWalked])
  useEffect(() => {
    const scroller = line.current
    if (!isWalked || !scroller) return
    const look = () => {
      const middle = scroller.getBoundingClientRect()
      const at = (middle.left + middle.right) / 2
      const seen = pans.findIndex((pan) => {
        const box = placeOf(line.current, pan)?.getBoundingClientRect()
        return box !== undefined && box.left <= at && box.right >= at
      })
      if (seen !== -1) setIndex(seen)
    }
    scroller.addEventListener('scroll', look, { passive: true })
    return () => scroller.removeEventListener('scroll', look)
  }, [isWalked, line, pans])
  return { pan: isWalked ? (pans[index] ?? null) : null, index, go }
}
