import { describe, expect, it } from 'vitest'
import { kitchenMet } from '#lib/rooms/care/facts/kitchen-of.ts'
import { probeTrail } from '#lib/rooms/food/facts/probe-trail.ts'
import type { Recorded } from '#lib/service/events/event.ts'
import { NOT_OPENED } from '#lib/service/state.ts'
import { stateHash } from '#lib/service/state-hash.ts'
import { evolve } from '#lib/spine/evolve.ts'
import { at, fahrenheit } from '#tests/support/food.ts'
import {
  buildIn,
  choose,
  type Given,
  at as of,
  ofPortions,
  onward,
  ready,
  running,
  send,
  type Told,
} from '#tests/support/service.ts'

const probed = (
  what: 'pan' | 'backup' | 'batch',
  id: string,
  over: { readonly probe?: string; readonly cleaned?: boolean; readonly at?: number } = {},
): Given => {
  const isCold = ['slaw', 'cheddar', 'tuna'].some((one) => id.includes(one))
  return {
    type: 'readTemperature',
    what,
    id,
    reading: { ...fahrenheit(isCold ? 38 : 150), probe: 'thin', ...over },
    initials: 'KT',
  }
}

const backup = ({ state }: Told, id: string) => state.backupPans[id]
const isReady = ({ state }: Told, component: string) => state.backups[component] !== undefined

const noMilk = choose(
  'bean-and-pepper',
  { cheddar: 'no', almonds: 'no', 'yogurt-sauce': 'no' },
  {
    asked: 'needs',
    needs: [{ code: 'milk', handling: 'keep-apart', reason: null }],
    agreed: true,
  },
)

describe('a probe that goes from food to food', () => {
  it('[F78][S191] brings what it was in into a protected back-up pan', () => {
    const told = ready(probed('pan', 'pan-cheddar'), probed('backup', 'back-up-rice'))
    expect(isReady(told, 'rice')).toBe(false)
    expect(backup(told, 'back-up-rice')).toMatchObject({ guarded: false, soiledBy: ['cheddar'] })
    // No scoop went back to where it belongs.
    expect(told.state.pans['pan-cheddar']?.soiledBy).toEqual([])
  })

  it('[F78] brings nothing once it was washed, rinsed and sanitized', () => {
    const clean = probed('backup', 'back-up-rice', { cleaned: true })
    const told = ready(probed('pan', 'pan-cheddar'), clean)
    expect(isReady(told, 'rice')).toBe(true)
    expect(backup(told, 'back-up-rice')).toMatchObject({ guarded: true, soiledBy: [] })
    // What it was cleaned of stays off it.
    const next = onward(told, probed('backup', 'back-up-rice'))
    expect(isReady(next, 'rice')).toBe(true)
    expect(probeTrail(running(next), 'thin')).toEqual([{ component: 'rice', behind: true }])
  })

  it('[F78] is told by the name on it, however that is typed', () => {
    const cheddar = probed('pan', 'pan-cheddar', { probe: 'Thin ' })
    expect(isReady(ready(cheddar, probed('backup', 'back-up-rice')), 'rice')).toBe(false)
    const odd = { probe: 'constructor' }
    const oddly = ready(probed('pan', 'pan-cheddar', odd), probed('backup', 'back-up-rice', odd))
    expect(isReady(oddly, 'rice')).toBe(false)
    const other = probed('backup', 'back-up-rice', { probe: 'thick' })
    expect(isReady(ready(cheddar, other), 'rice')).toBe(true)
  })

  it('[F78][S191] carries more than the pan before, and the scoops that were in that', () => {
    const told = ready(
      { type: 'soilPan', pan: 'pan-beans', by: 'almonds' },
      probed('pan', 'pan-cheddar', { cleaned: true }),
      probed('pan', 'pan-beans', { cleaned: false }),
      probed('backup', 'back-up-rice', { cleaned: false }),
    )
    expect(backup(told, 'back-up-rice')?.soiledBy).toEqual(['almonds', 'beans', 'cheddar'])
  })

  it('[S191] is foreign to a back-up pan also where it was in the same food on the line', () => {
    const told = ready(probed('pan', 'pan-rice'), probed('backup', 'back-up-rice'))
    expect(isReady(told, 'rice')).toBe(false)
    expect(backup(told, 'back-up-rice')).toMatchObject({ guarded: false, soiledBy: [] })
  })

  it('[S191] holds what would come out of that pan, and not what was made before', () => {
    const made: readonly Given[] = [
      send(noMilk),
      { type: 'start', ...of('1A'), read: true },
      { type: 'finish', ...of('1A') },
      send(noMilk),
    ]
    const before = ready(...made)
    expect(before.state.backupPans['back-up-slaw']?.amount).toBe(ofPortions('slaw', 11))
    const told = onward(before, probed('pan', 'pan-cheddar'), probed('backup', 'back-up-slaw'))
    expect(buildIn(told, '2A').hold?.reason).toBe('contact')
    expect(buildIn(told, '1A').hold).toBeNull()
    const { begunIn, madeIn } = buildIn(told, '1A')
    const making = { begunIn: begunIn ?? 0, madeIn: madeIn ?? 0 }
    expect(kitchenMet(running(told), making).soiledBehind).toEqual([])
    // Told later than it was taken it may have been before.
    const earlier = { at: before.state.at - 5_000 }
    const late = onward(
      before,
      probed('pan', 'pan-cheddar', earlier),
      probed('backup', 'back-up-slaw', earlier),
    )
    expect(kitchenMet(running(late), making).soiledBehind).toEqual([
      { component: 'slaw', by: 'cheddar' },
    ])
  })

  it('[F80] ends the protection of what is put in unless it is said to be clean', () => {
    const put = (cleaned?: boolean): Given => ({
      type: 'setBackup',
      component: 'rice',
      ready: true,
      amount: ofPortions('rice', 4),
      batch: 'opening-rice',
      notFirst: true,
      reading: { ...fahrenheit(150), probe: 'thin', ...(cleaned === undefined ? {} : { cleaned }) },
      initials: 'KT',
    })
    const away: Given = { type: 'setBackup', component: 'rice', ready: false }
    const told = (cleaned?: boolean) => ready(away, probed('pan', 'pan-cheddar'), put(cleaned))
    expect(isReady(told(), 'rice')).toBe(false)
    expect(isReady(told(true), 'rice')).toBe(true)
    expect(isReady(told(false), 'rice')).toBe(false)
    expect(backup(told(false), 'back-up-rice')?.soiledBy).toEqual(['cheddar'])
    // One that was in nothing but its pot brings nothing.
    expect(isReady(ready(away, probed('batch', 'opening-rice'), put()), 'rice')).toBe(true)
  })

  it('[F91] leaves in a batch what it carries, which is in the protected back-up pan that it goes into', () => {
    const put: Given = {
      type: 'setBackup',
      component: 'rice',
      ready: true,
      amount: ofPortions('rice', 4),
      batch: 'opening-rice',
      notFirst: true,
      reading: { ...fahrenheit(150), probe: 'own', cleaned: true },
      initials: 'KT',
    }
    const away: Given = { type: 'setBackup', component: 'rice', ready: false }
    const told = (...read: readonly Given[]) => ready(away, ...read, put)
    const soiled = told(probed('pan', 'pan-cheddar'), probed('batch', 'opening-rice'))
    expect(isReady(soiled, 'rice')).toBe(false)
    expect(backup(soiled, 'back-up-rice')).toMatchObject({ guarded: false, soiledBy: ['cheddar'] })
    const ofLine = told(probed('pan', 'pan-rice'), probed('batch', 'opening-rice'))
    expect(backup(ofLine, 'back-up-rice')).toMatchObject({ guarded: false, soiledBy: [] })
    const clean = probed('batch', 'opening-rice', { cleaned: true })
    expect(isReady(told(probed('pan', 'pan-cheddar'), clean), 'rice')).toBe(true)
    // A probe that goes into that batch takes it on, and it is in the next pan of it.
    const more = onward(soiled, probed('batch', 'opening-rice', { probe: 'thick' }))
    expect(probeTrail(running(more), 'thick')).toEqual([
      { component: 'rice', behind: true },
      { component: 'cheddar', behind: false },
    ])
    expect(isReady(onward(soiled, away, put), 'rice')).toBe(false)
  })

  it('[F88] is in what it reads as that is loaded, changed and topped up', () => {
    const carries = (told: Told) => probeTrail(running(told), 'thin')
    const read = (degrees: number, cleaned?: boolean) => ({
      reading: {
        ...fahrenheit(degrees),
        probe: 'thin',
        ...(cleaned === undefined ? {} : { cleaned }),
      },
      initials: 'KT',
    })
    const rice = { pan: 'pan-rice', amount: ofPortions('rice', 4), batch: 'opening-rice' }
    const emptied: Given = { type: 'correct', pan: 'pan-rice', amount: 0 }
    const nuts = probed('pan', 'pan-cheddar')
    const both = [
      { component: 'cheddar', behind: false },
      { component: 'rice', behind: false },
    ]
    for (const how of ['load', 'changePan', 'topUp'] as const) {
      const before = how === 'load' ? [nuts, emptied] : [nuts]
      const put: Given = { type: how, ...rice, ...read(150), notFirst: true }
      expect(carries(ready(...before, put))).toEqual(both)
    }
    const put: Given = { type: 'load', ...rice, ...read(150, true), notFirst: true }
    expect(carries(ready(nuts, emptied, put))).toEqual([{ component: 'rice', behind: false }])
  })

  it('[F88] isn’t cleaned by an older reading that goes along with food on a clock', () => {
    const clock: Given = {
      type: 'startTimeClock',
      what: 'batch',
      id: 'opening-slaw',
      leftAt: ready().state.at,
      from: 'cold',
      rule: '6h',
      reading: { ...fahrenheit(38), probe: 'thin', cleaned: true },
      initials: 'KT',
    }
    const change: Given = {
      type: 'changePan',
      pan: 'pan-slaw',
      amount: ofPortions('slaw', 4),
      batch: 'opening-slaw',
      heldBy: 'time',
      initials: 'KT',
      notFirst: true,
    }
    const told = ready(clock, probed('pan', 'pan-cheddar'), change)
    expect(told.events.at(-1)).toMatchObject({ type: 'panChanged', reading: { cleaned: true } })
    expect(probeTrail(running(told), 'thin')).toContainEqual({
      component: 'cheddar',
      behind: false,
    })
  })

  it('[F88] brings nothing by an older reading that goes along with food on a clock', () => {
    const clock: Given = {
      type: 'startTimeClock',
      what: 'batch',
      id: 'opening-slaw',
      leftAt: ready().state.at,
      from: 'cold',
      rule: '6h',
      reading: { ...fahrenheit(38), probe: 'thin' },
      initials: 'KT',
    }
    const put: Given = {
      type: 'setBackup',
      component: 'slaw',
      ready: true,
      amount: ofPortions('slaw', 4),
      batch: 'opening-slaw',
      heldBy: 'time',
      initials: 'KT',
      notFirst: true,
    }
    const away: Given = { type: 'setBackup', component: 'slaw', ready: false }
    const told = ready(clock, probed('pan', 'pan-cheddar'), away, put)
    expect(backup(told, 'back-up-slaw')?.guarded).toBe(true)
    expect(told.events.at(-1)).toMatchObject({ type: 'backupSet', reading: { probe: 'thin' } })
    expect(told.events.at(-1)).not.toHaveProperty('brought')
  })

  it('[F79] in an older log may carry whatever was loaded', () => {
    const { events } = ready()
    const older = events.map((event): Recorded => {
      if (event.type !== 'serviceOpened') return event
      const { followsProbes: _, ...rest } = event
      return rest
    })
    const state = older.reduce(evolve, NOT_OPENED)
    expect(state.probes).toBeUndefined()
    const { probes: _, ...same } = ready().state
    expect(stateHash(state)).toBe(stateHash(same))
    const told: Told = { state, events: older }
    const read = at(told, 9, probed('backup', 'back-up-rice', { probe: 'new' }))
    expect(backup(read, 'back-up-rice')?.guarded).toBe(false)
    expect(backup(read, 'back-up-rice')?.soiledBy).toContain('cheddar')
    const clean = at(told, 9, probed('backup', 'back-up-rice', { cleaned: true }))
    expect(backup(clean, 'back-up-rice')?.guarded).toBe(true)
  })
})
