/** Short knocks from oscillators: no files, and nothing that plain http lacks. */
import { keep, readKept } from '#components/device/device-shelf.ts'

export type Knock = 'new' | 'stop' | 'made'

/** `locked`: on, but the browser waits for the first touch of the page. */
export type SoundState = 'on' | 'off' | 'locked' | 'none'

interface Tone {
  readonly hz: number
  /** Seconds after the knock began. */
  readonly from: number
  readonly lasts: number
}

const KEY = 'sound'
const LOUDNESS = 0.5

const TONES: Readonly<Record<Knock, readonly Tone[]>> = {
  new: [
    { hz: 660, from: 0, lasts: 0.14 },
    { hz: 880, from: 0.16, lasts: 0.22 },
  ],
  made: [
    { hz: 990, from: 0, lasts: 0.12 },
    { hz: 742, from: 0.14, lasts: 0.2 },
  ],
  stop: [
    { hz: 440, from: 0, lasts: 0.25 },
    { hz: 330, from: 0.3, lasts: 0.25 },
    { hz: 440, from: 0.6, lasts: 0.25 },
    { hz: 330, from: 0.9, lasts: 0.4 },
  ],
}

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
    }
    void context.resume().then(tell, tell)
  }

  const play = ({ hz, from, lasts }: Tone) => {
    if (!context) return
    const begin = context.currentTime + from
    const tone = context.createOscillator()
    const level = context.createGain()
    tone.type = 'triangle'
    tone.frequency.value = hz
    level.gain.setValueAtTime(0, begin)
    level.gain.linearRampToValueAtTime(LOUDNESS, begin + 0.01)
    level.gain.exponentialRampToValueAtTime(0.001, begin + lasts)
    tone.connect(level).connect(context.destination)
    tone.start(begin)
    tone.stop(begin + lasts)
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
      if (read() === 'on') for (const tone of TONES[knock]) play(tone)
    },
    unlock,
  }
}
