/** Whose hands read, and with what: kept from one job to the next, initials only while a round goes on. */
import { useEffect, useRef } from 'react'
import { keep, readKept } from '#components/device/device-shelf.ts'
import { type DeviceMoment, initialsAt } from '#lib/rooms/food/views/kept-initials.ts'

const PROBE_KEY = 'probe'
const MIDDLE_KEY = 'probe-in-the-middle'

export interface Hands {
  readonly initials: string
  readonly probe: string
  /** The last reading was taken where this food is read: not at the surface. */
  readonly isMiddle: boolean
}

/** In the page alone: who opens it anew says who they are. */
let used: (DeviceMoment & { readonly initials: string }) | null = null

const moment = (): DeviceMoment => ({ ran: performance.now(), wall: Date.now() })

export const keptHands = (): Hands => ({
  initials: initialsAt(used, moment()),
  probe: readKept(PROBE_KEY) ?? '',
  isMiddle: readKept(MIDDLE_KEY) !== null,
})

/** What isn't told stays as it was; what is told empty is forgotten. */
export const keepHands = (hands: Partial<Hands>): void => {
  const initials = hands.initials?.trim()
  if (initials !== undefined) used = initials === '' ? null : { initials, ...moment() }
  if (hands.probe !== undefined) keep(PROBE_KEY, hands.probe.trim() || null)
  if (hands.isMiddle !== undefined) keep(MIDDLE_KEY, hands.isMiddle ? 'yes' : null)
}

const LOOK_MS = 10_000

/** What stands in an open form since a round ended is taken out of it: `forget` is told whose. */
export const useLapse = (forget: (initials: string) => void): void => {
  const told = useRef(forget)
  useEffect(() => {
    told.current = forget
  })
  useEffect(() => {
    let last = keptHands().initials
    const timer = setInterval(() => {
      const { initials } = keptHands()
      if (last !== '' && initials === '') told.current(last)
      last = initials
    }, LOOK_MS)
    return () => clearInterval(timer)
  }, [])
}
