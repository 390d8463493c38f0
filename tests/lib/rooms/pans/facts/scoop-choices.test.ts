import { describe, expect, it } from 'vitest'
import { nearestScoops, type ToolAtHand } from '#lib/estimate/nearest-scoop.ts'
import { isFarOff, percentOff, scoopChoices } from '#lib/rooms/pans/facts/scoop-choices.ts'
import { missingOf, standInFor, toolsAtHand } from '#lib/rooms/pans/facts/stand-in.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { panRuleWords } from '#lib/words/pan-rules-en.ts'
import {
  codeOf,
  demoStation,
  eventsOf,
  type Given,
  given,
  onward,
  refusalOf,
  running,
  type Told,
  when,
} from '#tests/support/service.ts'

type Tool = StationDocument['tools'][number]

const scoop = (number: number, over: Partial<Tool> = {}): Tool => ({
  id: `s-${number}`,
  name: `#${number} spare`,
  tool: { tool: 'scoop', number },
  usualFor: null,
  ...over,
})

/** The demo station with these tools beside each component's own. */
const withTools = (...tools: Tool[]): Told => {
  const told = given()
  const own = demoStation.tools.filter(({ usualFor }) => usualFor !== null)
  const station = { ...running(told).station, tools: [...own, ...tools] }
  return { ...told, state: { ...running(told), station } }
}

const offered = (told: Told, component: string) =>
  (scoopChoices(running(told), component)?.choices ?? []).map(({ measures, error, isSpare }) => [
    measures.map(({ id, count }) => `${count} ${id}`).join(' + '),
    percentOff(error),
    isSpare,
  ])

const miss = (component: string, over: object = {}): Given => ({
  type: 'missScoop',
  component,
  ...over,
})

describe('the choices for a missing scoop', () => {
  it('[K30] an identical spare stands first, though as near comes with fewer measures', () => {
    const told = withTools(scoop(16), scoop(8), scoop(12))
    expect(offered(told, 'rice')[0]).toEqual(['2 s-16', 0, true])
    expect(offered(told, 'rice').map(([what]) => what)).toContain('1 s-8')
    const ladle: Tool = {
      id: 'spoodle',
      name: '4 fl oz spoodle',
      tool: { tool: 'spoodle', flOz: 4 },
      usualFor: null,
    }
    expect(offered(withTools(ladle), 'rice')[0]).toEqual(['1 spoodle', 0, false])
    const cup: Tool = {
      id: 'cup',
      name: '1/4 cup measure',
      tool: { tool: 'measure', size: 0.25, unit: 'cup' },
      usualFor: null,
    }
    // As large as a #16, and still no scoop.
    expect(offered(withTools(cup), 'rice')[0]).toEqual(['2 cup', 0, false])
  })

  it('[K30] no scoop of another component, and none that stands in elsewhere, is a spare', () => {
    const beans = scoop(8, { id: 'own', usualFor: 'beans' })
    expect(offered(withTools(beans), 'chicken').some(([, , isSpare]) => isSpare)).toBe(false)
    const told = withTools(scoop(16))
    expect(offered(told, 'rice')[0]?.[2]).toBe(true)
    const lent = onward(told, miss('peppers', { measures: [{ id: 's-16', count: 1 }] }))
    expect(offered(lent, 'rice').some(([, , isSpare]) => isSpare)).toBe(false)
  })

  it('[K30] a spare that would carry something in is never offered', () => {
    const told = withTools(scoop(24))
    expect(offered(told, 'cheddar')[0]).toEqual(['1 s-24', 0, true])
    const used = { ...running(told), toolsIn: { 's-24': ['almonds'] } }
    const choices = scoopChoices(used, 'cheddar')
    expect(choices?.choices.flatMap((one) => one.measures.map(({ id }) => id))).not.toContain(
      's-24',
    )
    expect(choices?.notLent.map(({ id }) => id)).toContain('s-24')
  })

  it('[K30] after spares the nearest, each set of tools once, at most four', () => {
    const told = withTools(scoop(12), scoop(20), scoop(30), scoop(40))
    const list = offered(told, 'peppers')
    expect(list.length).toBe(4)
    const state = running(told)
    const best = standInFor(state, 'peppers')?.best
    expect(scoopChoices(state, 'peppers')?.choices[0]?.measures).toEqual(best?.measures)
    const errors = list.slice(1).map(([, percent]) => Math.abs(Number(percent)))
    expect(errors).toEqual([...errors].sort((one, other) => one - other))
    const missing = missingOf(state, 'peppers')
    const tools: readonly ToolAtHand[] = toolsAtHand(state, 'peppers')
    const all = missing ? nearestScoops(state.station, missing, tools, 99) : []
    const sets = all.map(({ measures }) => measures.map(({ id }) => id).join(' '))
    expect(new Set(sets).size).toBe(sets.length)
    expect(scoopChoices(state, 'pita')).toBeNull()
  })

  it('[K30] each is said with how far off it is', () => {
    const [first, second] =
      scoopChoices(running(withTools(scoop(24), scoop(30))), 'cheddar')?.choices ?? []
    if (!first || !second) throw new Error('there are two choices')
    const said = { weight: (mg: number) => `${mg / 1000} g`, name: (id: string) => id }
    expect(panRuleWords.choice(first, said)).toMatchObject({
      label: '1 level s-24',
      more: expect.stringMatching(/^An identical spare: the same by weight/),
    })
    expect(panRuleWords.choice(second, said).more).toMatch(/^20 % light/)
  })

  it('[K30] where nothing is named, the first is taken', () => {
    const events = eventsOf(when(withTools(scoop(16), scoop(8)), miss('rice')))
    expect(events).toMatchObject([{ type: 'scoopMissed', measures: [{ id: 's-16', count: 2 }] }])
  })
})

describe('a portion that is far off', () => {
  const light = { measures: [{ id: 's-30', count: 1 }] }
  const told = withTools(scoop(30))

  it('[K31] is refused without the lead’s own yes, whether it was named or is the nearest', () => {
    for (const command of [miss('cheddar', light), miss('cheddar')])
      expect(refusalOf(when(told, command))).toEqual({
        code: 'scoop-far-off',
        component: 'cheddar',
        percent: -20,
      })
    for (const by of ['lead', 'in-charge'] as const)
      expect(codeOf(when(told, miss('cheddar', { ...light, yes: true }), { by }))).toBeNull()
    const heavy = miss('cheddar', { measures: [{ id: 's-30', count: 2 }] })
    expect(refusalOf(when(told, heavy))).toMatchObject({ percent: 60 })
  })

  it('[K31] begins at twenty percent as it is shown', () => {
    expect([-0.2, -0.195, 0.2, 0.196, 1].map(isFarOff)).toEqual([true, true, true, true, true])
    expect([0, -0.194, 0.194].map(isFarOff)).toEqual([false, false, false])
    const near = withTools(scoop(20))
    expect(codeOf(when(near, miss('cheddar', { measures: [{ id: 's-20', count: 1 }] })))).toBe(
      'scoop-far-off',
    )
    const nearest = withTools(scoop(30, { id: 's-30' }), scoop(12))
    expect(
      codeOf(when(nearest, miss('peppers', { measures: [{ id: 's-30', count: 2 }] }))),
    ).toBeNull()
  })

  it('[K31] is compared with the portion of its own scoop, also while another stands in', () => {
    const small = miss('peppers', { measures: [{ id: 's-20', count: 1 }], yes: true })
    const lent = onward(withTools(scoop(20), scoop(30)), small)
    const twice = miss('peppers', { measures: [{ id: 's-30', count: 2 }] })
    expect(codeOf(when(lent, twice))).toBeNull()
  })

  it('[K31] no yes makes a tool fit that carries something across', () => {
    const carries = miss('chicken', { measures: [{ id: 'scoop-24-cheddar', count: 3 }], yes: true })
    expect(codeOf(when(told, carries))).toBe('scoop-carries')
  })
})
