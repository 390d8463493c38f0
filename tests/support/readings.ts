import type { HeatReading } from '#lib/safety/cooking.ts'
import type { Reading } from '#lib/safety/readings.ts'
import type { Scale, Temperature } from '#lib/safety/temperature.ts'

/** Epoch milliseconds of a time of day on 1 October 2026, UTC. */
export const at = (time: string): number => Date.parse(`2026-10-01T${time}:00Z`)

export const degrees = (value: number, scale: Scale = 'F'): Temperature => ({
  tenths: Math.round(value * 10),
  scale,
})

/** A reading that counts: probe, middle of the food, initials. */
export const read = (
  value: number,
  time: string | number,
  other: Partial<Reading> & { readonly in?: Scale } = {},
): Reading => {
  const { in: scale = 'F', ...rest } = other
  return {
    temperature: degrees(value, scale),
    at: typeof time === 'number' ? time : at(time),
    probe: 'probe 1',
    where: 'middle-stirred',
    initialled: true,
    ...rest,
  }
}

export const heat = (
  value: number,
  heldSeconds: number | null,
  other: Partial<HeatReading> & { readonly in?: Scale; readonly time?: string } = {},
): HeatReading => {
  const { time = '09:00', stoodSeconds = null, ...rest } = other
  return { ...read(value, time, rest), heldSeconds, stoodSeconds }
}
