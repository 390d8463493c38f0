import { useEffect, useRef, useState } from 'react'
import {
  type Stop,
  setDown,
  stopBeside,
  stopNow,
  stopsOf,
  stopUnder,
  type WellPlan,
} from '#components/menu/line/stops.ts'
import type { PanSize } from '#lib/measure/pans.ts'
import { WELL_IN, wellFromAbove } from '#lib/measure/well-layout.ts'

/** A press that goes no farther is a tap, CSS pixels. */
const STILL_PX = 8
/** So near to the edge of a long line it walks on by itself, CSS pixels. */
const EDGE_PX = 40

/** Where a pan that is dragged is, of the window, CSS pixels. */
interface Carried {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

/** A pan that was taken out of its well. */
export interface Hand {
  readonly pan: string
  readonly stop: Stop
  /** null where it is moved by keys or taps. */
  readonly carried: Carried | null
}

interface Pressed {
  readonly pan: string
  readonly pointer: number
  readonly from: { readonly x: number; readonly y: number }
  readonly box: DOMRect
}

interface Standing {
  readonly pan: string
  readonly size: PanSize
}

const middlesOf = (pans: readonly Standing[]): readonly number[] => {
  const { stands } = wellFromAbove(pans)
  return pans.flatMap(({ pan }) => {
    const stand = stands.find((one) => one.pan === pan)
    return stand ? [(stand.left + stand.along / 2) / WELL_IN.along] : []
  })
}

/** The well under a point of the window, or the nearest along the line. */
const wellAt = (root: HTMLElement, x: number): { well: string; along: number } | null => {
  const wells = [...root.querySelectorAll<HTMLElement>('[data-opening]')].map((element) => {
    const { left, right, width } = element.getBoundingClientRect()
    return {
      well: element.dataset.opening ?? '',
      along: (x - left) / width,
      far: Math.max(left - x, x - right, 0),
    }
  })
  return wells.toSorted((one, other) => one.far - other.far)[0] ?? null
}

/** A pan taken in the hand by drag, by keys or by a tap; set down where it fits. */
export const useHand = <Pan extends Standing>(
  wells: readonly WellPlan<Pan>[],
  onSetDown: (pan: string, stop: Stop) => void,
) => {
  const root = useRef<HTMLDivElement>(null)
  const [hand, setHand] = useState<Hand | null>(null)
  const pressed = useRef<Pressed | null>(null)
  const wasDragged = useRef(false)
  const standing = (id: string): Pan | undefined =>
    wells.flatMap(({ pans }) => pans).find(({ pan }) => pan === id)
  const held = hand === null ? undefined : standing(hand.pan)

  const take = (pan: string): void => {
    const stop = stopNow(wells, pan)
    if (stop) setHand({ pan, stop, carried: null })
  }
  const put = (at: Hand): void => {
    if (!at.stop.fits) return
    const before = stopNow(wells, at.pan)
    setHand(null)
    if (before?.well !== at.stop.well || before.at !== at.stop.at) onSetDown(at.pan, at.stop)
  }
  const step = (pan: string, by: -1 | 1): void => {
    const one = standing(pan)
    if (!one) return
    const from = hand?.pan === pan ? hand.stop : stopNow(wells, pan)
    const stop = stopBeside(stopsOf(wells, one), from, by)
    if (stop) setHand({ pan, stop, carried: null })
  }

  // A pan that is moved is drawn in another well, so that no element keeps the pointer.
  const moved = useRef<(event: PointerEvent) => void>(() => {})
  const raised = useRef<(event: PointerEvent) => void>(() => {})
  moved.current = (event) => {
    const press = pressed.current
    const one = press && standing(press.pan)
    if (!press || !one || event.pointerId !== press.pointer || !root.current) return
    const [dx, dy] = [event.clientX - press.from.x, event.clientY - press.from.y]
    if (!wasDragged.current && Math.hypot(dx, dy) < STILL_PX) return
    wasDragged.current = true
    const frame = root.current.getBoundingClientRect()
    if (event.clientX > frame.right - EDGE_PX) root.current.scrollLeft += EDGE_PX / 2
    if (event.clientX < frame.left + EDGE_PX) root.current.scrollLeft -= EDGE_PX / 2
    const at = wellAt(root.current, event.clientX)
    const others = wells
      .find(({ well }) => well === at?.well)
      ?.pans.filter(({ pan }) => pan !== one.pan)
    const stop = at && stopUnder(stopsOf(wells, one), at.well, at.along, middlesOf(others ?? []))
    if (!stop) return
    const { left, top, width, height } = press.box
    setHand({ pan: one.pan, stop, carried: { x: left + dx, y: top + dy, width, height } })
  }
  raised.current = (event) => {
    if (event.pointerId !== pressed.current?.pointer) return
    pressed.current = null
    if (!hand?.carried) return
    if (event.type === 'pointerup' && hand.stop.fits) put(hand)
    else setHand(null)
  }
  useEffect(() => {
    const onMove = (event: PointerEvent) => moved.current(event)
    const onUp = (event: PointerEvent) => raised.current(event)
    addEventListener('pointermove', onMove)
    addEventListener('pointerup', onUp)
    addEventListener('pointercancel', onUp)
    return () => {
      removeEventListener('pointermove', onMove)
      removeEventListener('pointerup', onUp)
      removeEventListener('pointercancel', onUp)
    }
  }, [])

  const press = (pan: string, event: React.PointerEvent<HTMLElement>): void => {
    if (event.button !== 0 || pressed.current) return
    wasDragged.current = false
    pressed.current = {
      pan,
      pointer: event.pointerId,
      from: { x: event.clientX, y: event.clientY },
      box: event.currentTarget.getBoundingClientRect(),
    }
  }
  /** Whether the click that comes now ends a drag, and is no tap. */
  const isDragsEnd = (): boolean => {
    const was = wasDragged.current
    wasDragged.current = false
    return was
  }
  return {
    root,
    hand,
    held,
    /** As it would stand if the pan were set down now. */
    shown: hand && held ? setDown(wells, held, hand.stop) : wells,
    /** Where it could be set down with a tap. */
    stops: held ? stopsOf(wells, held) : [],
    take,
    step,
    press,
    isDragsEnd,
    aim: (stop: Stop) => hand && setHand({ ...hand, stop, carried: null }),
    putDown: () => hand && put(hand),
    putBack: () => setHand(null),
  }
}
