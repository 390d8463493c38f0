import { useEffect, useRef } from 'react'

/** A tap that comes within this many milliseconds was meant for what stood there before. */
export const GUARD_MS = 400

/** Keeps taps from what has only just come. */
export interface Guard {
  /** Nothing is meant by a tap for a while from now on. */
  readonly close: () => void
  readonly isOpen: () => boolean
}

const createGuard = (): Guard => {
  let quietUntil = 0
  return {
    close: () => {
      quietUntil = performance.now() + GUARD_MS
    },
    isOpen: () => performance.now() >= quietUntil,
  }
}

export const useGuard = (): Guard => {
  const guard = useRef<Guard>(null)
  guard.current ??= createGuard()
  return guard.current
}

/** Tells whether what is shown has stood long enough to be tapped on purpose; `what` restarts it. */
export const useSettled = (what: unknown): (() => boolean) => {
  const guard = useGuard()
  // biome-ignore lint/correctness/useExhaustiveDependencies: what comes closes it, whatever it is
  useEffect(() => guard.close(), [guard, what])
  return guard.isOpen
}
