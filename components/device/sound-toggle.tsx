'use client'

import styles from '#components/device/device.module.css'
import { useSound } from '#components/device/use-sound.ts'
import { useDeviceWords } from '#components/device/words.tsx'

/** Turns this device's sound on and off, and says when it still waits for a touch. */
export function SoundToggle() {
  const words = useDeviceWords()
  const { state, turn } = useSound()
  return (
    <button
      type="button"
      className={styles.sound}
      data-sound=""
      data-state={state}
      disabled={state === 'none'}
      onClick={() => turn(state !== 'on')}
    >
      <svg viewBox="0 0 32 32" aria-hidden="true" className={styles.speaker}>
        <path d="M4 12h6l8-7v22l-8-7H4z" />
        {state === 'on' ? (
          <path d="M22 10q5 6 0 12M25.5 6q8 10 0 20" className={styles.waves} />
        ) : (
          <path d="M22 12l8 8M30 12l-8 8" className={styles.waves} />
        )}
      </svg>
      <span>{words.sound[state]}</span>
    </button>
  )
}
