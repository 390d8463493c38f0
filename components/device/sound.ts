/** Short knocks from oscillators: no files, and nothing that plain http lacks. */
import { keep, readKept } from '#components/device/device-shelf.ts'
import type { Knock } from '#components/device/tones.ts'

/** `locked`: on, but the browser waits for the first touch of the page. */
export type SoundState = 'on' | 'off' | 'locked' | 'none'

const KEY = 'sound'
export interface Sound {
  state(): SoundState
  subscribe(listener: () => void): () => void
  turn(on: boolean): void
  /** Plays where sound is on and unlocked. */
  knock(knock: Knock): void
  /** To be called in a touch or a key press: browsers let sound begin only there. */
  unlock(): void
}

export const createSound = (): Sound => {
  const listeners = new Set<() => void>()
  let context: AudioContext | null = null
  let play: ((context: AudioContext, knock: Knock) => void) | null = null
  let isOn = readKept(KEY) !== 'off'
  let now: SoundState = 'locked'

  const read = (): SoundState => {
    if (!isOn) return 'off'
    if (typeof AudioContext === 'undefined') return 'none'
    return context?.state === 'running' ? 'on' : 'locked'
  }

  const tell = () => {
    const next = read()
    if (next === now) return
    now = next
    for (const listener of listeners) listener()
  }

  const unlock = () => {
    if (!isOn || typeof AudioContext === 'undefined' || context?.state === 'running') return
    if (!context) {
      context = new AudioContext()
      context.addEventListener('statechange', tell)
      // Not before the first touch: no screen needs it to be there.
      void import('#components/device/tones.ts').then((tones) => {
        play = tones.playKnock
      })
    }
    void context.resume().then(tell, tell)
  }

  now = read()
  return {
    state: () => now,
    subscribe: (listener) => {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    turn: (on) => {
      isOn = on
      keep(KEY, on ? 'on' : 'off')
      if (on) unlock()
      tell()
    },
    knock: (knock) => {
      if (read() === 'on' && context) play?.(context, knock)
    },
    unlock,
  }
}
