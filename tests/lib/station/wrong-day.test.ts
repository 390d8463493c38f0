import { describe, expect, it } from 'vitest'
import alderHall from '#fixtures/stations/alder-hall.json' with { type: 'json' }
import { MODEL_CODE } from '#lib/safety/limits.ts'
import { stationSchema } from '#lib/station/schema.ts'

type Document = ReturnType<typeof stationSchema.parse>

/** What is said of the demo station once something of it is changed. */
const saidOf = (edit: (to: Document) => unknown): readonly string[] => {
  const document = stationSchema.parse(alderHall)
  edit(document)
  const read = stationSchema.safeParse(document)
  return read.success ? [] : read.error.issues.map((one) => one.message)
}

const componentOf = (to: Document, id: string) => {
  const found = to.components.find((one) => one.id === id)
  if (!found) throw new Error(`no ${id}`)
  return found
}

describe('a station document', () => {
  it.each<[string, (to: Document) => unknown, string]>([
    [
      'a rush that ends before it begins',
      (to) => to.day.rushes.push({ from: '12:00', to: '11:00' }),
      'a rush from 12:00 ends at 11:00: say them the other way round',
    ],
    [
      'reheating in the hot well',
      (to) => to.safety.reheatOn.push('hot-well'),
      'a hot well holds food and never heats it: take it out of where it is reheated',
    ],
    [
      'a dry component that is cooked',
      (to) => {
        componentOf(to, 'almonds').food.kind = 'plant'
      },
      'almonds is held dry, so it is nothing that is cooked or mixed here',
    ],
    [
      'a pan of what is cooked to order',
      (to) => {
        componentOf(to, 'chicken').food.kind = 'eggs-to-order'
      },
      'chicken is cooked to order: what stands in a pan is cooked as a batch',
    ],
    [
      'readings that are asked for before the one before is due',
      (to) => {
        to.safety.readings = { everyMin: 10, askBeforeMin: 10 }
      },
      'readings are asked for before the one before them is due: ask later, or read less often',
    ],
    [
      'a looser limit that nobody read in the local code',
      (to) => {
        to.safety.limits = {
          coldHolding: {
            ...MODEL_CODE.coldHolding,
            tenths: { F: 450, C: 70 },
            certainty: 'memory',
          },
        }
      },
      'limit coldHolding asks less than the model code: read it in the local code first',
    ],
  ])('[B25] with %s is refused', (_, edit, said) => {
    expect(saidOf(edit)).toEqual([said])
  })

  it('[B25] sets limits of their own kind only, each with its paragraph', () => {
    const colder = { ...MODEL_CODE.coldHolding, tenths: { F: 380, C: 30 } }
    expect(
      saidOf((to) => {
        to.safety.limits = { coldHolding: colder }
      }),
    ).toEqual([])
    expect(
      saidOf((to) => {
        to.safety.limits = { timeOnly4h: colder } as never
      }).length,
    ).toBeGreaterThan(0)
  })
})
