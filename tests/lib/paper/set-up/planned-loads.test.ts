import { describe, expect, it } from 'vitest'
import { type PlannedFoods, withPlan } from '#lib/paper/set-up/planned-loads.ts'
import { setUpFacts } from '#lib/paper/set-up/set-up-facts.ts'
import { setUpSheetEn as words } from '#lib/paper/words/set-up-sheet-en.ts'
import { tasksEn } from '#lib/rooms/prep/words/tasks-en.ts'
import { componentOf } from '#lib/station/find.ts'
import { loadTotal } from '#lib/station/portion-amount.ts'
import { stationSchema } from '#lib/station/schema.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { demoStation } from '#server/demo-station.ts'

const FOODS: PlannedFoods = {
  rice: { loads: 3, portions: 36, inLarder: 0 },
  chicken: { loads: 1, portions: 12, inLarder: 8 },
  beans: { loads: 0, portions: 0, inLarder: 10 },
  // As own batches measured it, no whole portions a load were typed.
  slaw: { loads: 2, portions: 39, inLarder: 0 },
}

const pansBy = (station: StationDocument, foods: PlannedFoods) =>
  withPlan(setUpFacts(station), station, foods).wells.flatMap(({ pans }) => pans)

const panOf = (component: string, station = demoStation, foods = FOODS) => {
  const found = pansBy(station, foods).find((pan) => pan.component === component)
  if (found === undefined) throw new Error(`no pan of ${component}`)
  return found
}

/** The demo with its pita in two pans. */
const twoPitas = stationSchema.parse({
  ...demoStation,
  line: {
    wells: demoStation.line.wells.map((well) => ({
      ...well,
      pans: well.pans.flatMap((pan) =>
        pan.component === 'pita'
          ? [
              { ...pan, size: 'quarter' },
              { ...pan, id: 'second', size: 'quarter' },
            ]
          : [pan],
      ),
    })),
  },
})

describe('the set-up sheet of a plan', () => {
  it('[PA50] all loads of the plan are in place of what is usual, portions × portion = total', () => {
    const rice = panOf('rice')
    expect(words.load(rice)).toEqual(['36 × 1/2 cup', '= 1 gal 2 cups'])
    expect(rice.load).toEqual(loadTotal(componentOf(demoStation, 'rice'), 36))
    const usual = setUpFacts(demoStation).wells.flatMap(({ pans }) => pans)
    const of24 = usual.find(({ component }) => component === 'rice')
    expect(of24?.planned).toBeNull()
    // 24 as usual: half as much again in 36.
    expect((rice.totalMg ?? 0) * 2).toBe((of24?.totalMg ?? 0) * 3)
  })

  it('[PA50] so many loads of so many, as the plan says loads, and what the larder has', () => {
    const said = (id: string) => {
      const { planned } = panOf(id)
      return planned === null ? null : [words.loads(planned), words.inLarder(planned)]
    }
    expect(said('rice')).toEqual([`${tasksEn.loads(3)} of 12`, ''])
    expect(said('chicken')).toEqual([tasksEn.loads(1), '8 in the larder'])
    expect(said('beans')).toEqual(['no load', '10 in the larder'])
    expect(said('slaw')).toEqual([tasksEn.loads(2), ''])
    expect(said('cheddar')).toEqual(['nothing planned', ''])
  })

  it('[PA50] loads that two pans share are said whole at both, with both numbers', () => {
    const foods = { pita: { loads: 2, portions: 48, inLarder: 0 } }
    const pitas = pansBy(twoPitas, foods).filter(({ component }) => component === 'pita')
    expect(pitas.map(({ load }) => words.load({ load })[0])).toEqual(['48 × 1', '48 × 1'])
    const numbers = pitas.map(({ number }) => number)
    expect(pitas.map(({ shares }) => shares)).toEqual([numbers, numbers])
    expect(words.shares(numbers)).toBe(
      `Its loads are for pans ${numbers[0]} and ${numbers[1]} together.`,
    )
    expect(pansBy(demoStation, foods).every(({ shares }) => shares.length === 0)).toBe(true)
  })

  it('[PA50] that one load is more than its pan holds is told; many loads one after another aren’t', () => {
    // 52 portions of 4 fl oz in a half pan 4 in deep.
    const rice = (loads: number, portions: number) =>
      panOf('rice', demoStation, { rice: { loads, portions, inLarder: 0 } }).overfull
    expect(rice(1, 53)).toBe(52)
    expect(rice(1, 52)).toBeNull()
    expect(rice(10, 520)).toBeNull()
    expect(rice(10, 530)).toBe(52)
  })
})
