'use client'

import { useEffect, useState } from 'react'
import { type Held, holdAwake } from '#components/device/awake.ts'
import styles from '#components/device/device.module.css'
import { useDeviceWords } from '#components/device/words.tsx'

/** Keeps this screen awake; says so where it can't. */
export function Awake() {
  const words = useDeviceWords()
  const [held, setHeld] = useState<Held | null>(null)
  useEffect(() => holdAwake(setHeld), [])
  return (
    <p className={styles.awake} role="status" data-held={held ?? 'not-yet'}>
      {held === 'no' ? words.mayDim : ''}
    </p>
  )
}
