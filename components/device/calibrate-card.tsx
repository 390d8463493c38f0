'use client'

import { useEffect, useState } from 'react'
import styles from '#components/device/device.module.css'
import {
  applyMillimetres,
  CARD_MM,
  calibrate,
  keptPxPerMm,
  LEAST_PX_PER_MM,
  MOST_PX_PER_MM,
  pxPerMmNow,
} from '#components/device/millimetres.ts'
import { useNarrow } from '#components/device/use-device.ts'
import { useDeviceWords } from '#components/device/words.tsx'
import { DEFAULT_PX_PER_MM } from '#lib/measure/legibility.ts'

const STEP = 0.02

/** Sets this device's true size once, by a bank card held against the glass. */
export function CalibrateCard() {
  const words = useDeviceWords()
  const [pxPerMm, setPxPerMm] = useState(DEFAULT_PX_PER_MM)
  const [kept, setKept] = useState<number | null>(null)
  const side = useNarrow() ? 'short' : 'long'
  const [bar, setBar] = useState<HTMLDivElement | null>(null)
  useEffect(() => {
    applyMillimetres()
    setPxPerMm(pxPerMmNow())
    setKept(keptPxPerMm())
  }, [])
  useEffect(() => {
    if (bar) bar.style.width = `${pxPerMm * CARD_MM[side]}px`
  }, [bar, pxPerMm, side])
  const set = (next: number) =>
    setPxPerMm(Math.min(MOST_PX_PER_MM, Math.max(LEAST_PX_PER_MM, next)))
  const keepIt = (value: number | null) => {
    calibrate(value)
    setKept(keptPxPerMm())
    setPxPerMm(pxPerMmNow())
  }
  return (
    <section className={styles.calibrate} aria-labelledby="calibrate-title">
      <h2 id="calibrate-title">{words.calibrate}</h2>
      <p>{words.calibrateHow(side)}</p>
      <div className={styles.barBox}>
        <div className={styles.bar} ref={setBar} aria-hidden="true" />
      </div>
      <label className={styles.slide}>
        <span>{words.bar}</span>
        <input
          type="range"
          min={LEAST_PX_PER_MM}
          max={MOST_PX_PER_MM}
          step={STEP}
          value={pxPerMm}
          onChange={(event) => set(Number(event.target.value))}
        />
      </label>
      <div className={styles.buttons}>
        <button type="button" onClick={() => set(pxPerMm - STEP)}>
          {words.shorter}
        </button>
        <button type="button" onClick={() => set(pxPerMm + STEP)}>
          {words.longer}
        </button>
        <button type="button" className={styles.keep} onClick={() => keepIt(pxPerMm)}>
          {words.use}
        </button>
        {kept !== null && (
          <button type="button" onClick={() => keepIt(null)}>
            {words.forget}
          </button>
        )}
      </div>
      <p role="status" className={styles.kept}>
        {kept === null ? words.notSet(DEFAULT_PX_PER_MM.toFixed(2)) : words.set(kept.toFixed(2))}
      </p>
    </section>
  )
}
