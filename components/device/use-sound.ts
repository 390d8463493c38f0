import { useEffect, useRef, useSyncExternalStore } from 'react'
import { createSound, type Sound, type SoundState } from '#components/device/sound.ts'
import type { Knock } from '#components/device/tones.ts'

let shared: Sound | null = null

/** This device's one sound. */
export const sound = (): Sound => {
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
