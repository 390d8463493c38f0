import { useEffect, useRef, useSyncExternalStore } from 'react'
import { applyMillimetres } from '#components/device/millimetres.ts'
import { createSound, type Sound, type SoundState } from '#components/device/sound.ts'
import type { Knock } from '#components/device/tones.ts'

let shared: Sound | null = null
const sound = (): Sound => {
  shared ??= createSound()
  return shared
}

const subscribe = (listener: () => void) => sound().subscribe(listener)

/** Whether this device sounds, and the switch. */
export const useSound = (): {
  readonly state: SoundState
  readonly turn: (on: boolean) => void
} => {
  const state = useSyncExternalStore(
    subscribe,
    () => sound().state(),
    () => 'locked' as const,
  )
  return { state, turn: (on) => sound().turn(on) }
}

/** What every hot screen does with its device: true millimetres, and sound from the first touch. */
export const useDevice = (): void => {
  useEffect(() => {
    applyMillimetres()
    const unlock = (event: Event) => {
      const isSwitch = event.target instanceof Element && event.target.closest('[data-sound]')
      if (!isSwitch) sound().unlock()
    }
    document.addEventListener('pointerup', unlock)
    document.addEventListener('keyup', unlock)
    return () => {
      document.removeEventListener('pointerup', unlock)
      document.removeEventListener('keyup', unlock)
    }
  }, [])
}

/** Knocks when a count has grown since it was last seen; `null` while nothing is known yet. */
export const useKnock = (knock: Knock, count: number | null): void => {
  const seen = useRef<number | null>(null)
  useEffect(() => {
    if (count !== null && seen.current !== null && count > seen.current) sound().knock(knock)
    seen.current = count
  }, [knock, count])
}

/** Knocks when something is there that wasn't when it was last seen. */
export const useKnockForNew = (knock: Knock, names: readonly string[]): void => {
  const seen = useRef<ReadonlySet<string> | null>(null)
  const all = names.join(' ')
  useEffect(() => {
    const now = new Set(all === '' ? [] : all.split(' '))
    const before = seen.current
    if (before && [...now].some((name) => !before.has(name))) sound().knock(knock)
    seen.current = now
  }, [knock, all])
}

/** How much room there is: a phone, a 10-inch tablet at 1024 px, one at 1280 px, more. */
export type Room = 'phone' | 'small' | 'medium' | 'large'

const roomNow = (): Room =>
  innerWidth <= 700
    ? 'phone'
    : innerWidth <= 1150
      ? 'small'
      : innerWidth <= 1300
        ? 'medium'
        : 'large'

const onResize = (listener: () => void) => {
  addEventListener('resize', listener)
  return () => removeEventListener('resize', listener)
}

/** The room of this screen, followed as it is turned. */
export const useRoom = (): Room => useSyncExternalStore(onResize, roomNow, () => 'medium' as const)

/** Whether the screen is a phone's: the line wraps by well there. */
export const useNarrow = (): boolean => useRoom() === 'phone'
