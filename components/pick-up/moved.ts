import { type RefObject, useLayoutEffect, useRef } from 'react'

const TRAVEL_MS = 900

interface Spot {
  readonly x: number
  readonly y: number
  readonly width: number
}

const spotOf = (element: Element): Spot => {
  const { left, top, width } = element.getBoundingClientRect()
  return { x: left, y: top, width }
}

const wantsStill = (): boolean => matchMedia('(prefers-reduced-motion: reduce)').matches

/**
 * Lets a number travel from where it stood to where it stands now. Only what changed its place on
 * the line travels; where less motion is asked for, nothing does.
 */
export const useMoved = (): RefObject<HTMLDivElement | null> => {
  const board = useRef<HTMLDivElement>(null)
  const before = useRef(new Map<string, { readonly spot: Spot; readonly place: string }>())
  // Measured anew whenever anything is drawn: a resized window moves what stands still.
  useLayoutEffect(() => {
    const now = new Map<string, { readonly spot: Spot; readonly place: string }>()
    for (const element of board.current?.querySelectorAll<HTMLElement>('[data-build]') ?? []) {
      const names = (element.dataset.build ?? '').split(' ')
      const place = element.closest<HTMLElement>('[data-place]')?.dataset.place ?? ''
      const spot = spotOf(element)
      for (const name of names) now.set(name, { spot, place })
      const was = before.current.get(names[0] ?? '')
      if (!was || was.place === place || wantsStill()) continue
      const scale = was.spot.width / spot.width
      element.animate(
        [
          {
            transform: `translate(${was.spot.x - spot.x}px, ${was.spot.y - spot.y}px) scale(${scale})`,
            transformOrigin: '0 0',
            zIndex: 1,
          },
          { transform: 'none', transformOrigin: '0 0', zIndex: 1 },
        ],
        { duration: TRAVEL_MS, easing: 'ease-in-out' },
      )
    }
    before.current = now
  })
  return board
}
