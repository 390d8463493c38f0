'use client'

import { useEffect, useState } from 'react'
import type { Held } from '#components/device/awake.ts'
import styles from '#components/device/device.module.css'
import { useDeviceWords } from '#components/device/words.tsx'

/** Keeps this screen awake; says so where it can't. */
export function Awake() {
  const words = useDeviceWords()
  const [held, setHeld] = useState<Held | null>(null)
  useEffect(() => {
    let isGone = false
    let release: (() => void) | null = null
    void import('#components/device/awake.ts').then(({ holdAwake }) => {
      if (!isGone) release = holdAwake(setHeld)
    })
    return () => {
      isGone = true
      release?.()
    }
  }, [])
  return (
    <p className={styles.awake} role="status" data-held={held ?? 'not-yet'}>
      {held === 'no' ? words.mayDim : ''}
    </p>
  )
}
