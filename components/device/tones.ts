/** What each knock sounds like. */

export type Knock = 'new' | 'stop' | 'made'

interface Tone {
  readonly hz: number
  /** Seconds after the knock began. */
  readonly from: number
  readonly lasts: number
}

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

const playTone = (context: AudioContext, { hz, from, lasts }: Tone): void => {
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

export const playKnock = (context: AudioContext, knock: Knock): void => {
  for (const tone of TONES[knock]) playTone(context, tone)
}
