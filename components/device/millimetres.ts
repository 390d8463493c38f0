import { keep, readKept } from '#components/device/device-shelf.ts'
import { DEFAULT_PX_PER_MM } from '#lib/measure/legibility.ts'

const KEY = 'px-per-mm'

/** A bank card (ISO/IEC 7810, ID-1: 85.60 × 53.98 mm; from memory). */
export const CARD_MM = { long: 85.6, short: 53.98 } as const

/** Outside of these no tablet, phone or screen lies: 2 px/mm is a projector, 12 a very dense phone. */
export const LEAST_PX_PER_MM = 2
export const MOST_PX_PER_MM = 12

/** CSS pixels per millimetre of this device, once calibrated; null before. */
export const keptPxPerMm = (): number | null => {
  const kept = Number(readKept(KEY))
  return kept >= LEAST_PX_PER_MM && kept <= MOST_PX_PER_MM ? kept : null
}

/** Makes `--mm` one millimetre on this device. */
export const applyMillimetres = (): void => {
  const pxPerMm = keptPxPerMm()
  const root = document.documentElement.style
  if (pxPerMm === null) root.removeProperty('--mm')
  else root.setProperty('--mm', `${pxPerMm}px`)
}

/** Keeps what was measured; null forgets it. */
export const calibrate = (pxPerMm: number | null): void => {
  keep(KEY, pxPerMm === null ? null : String(pxPerMm))
  applyMillimetres()
}

export const pxPerMmNow = (): number => keptPxPerMm() ?? DEFAULT_PX_PER_MM
