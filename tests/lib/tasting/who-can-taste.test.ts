import { describe, expect, test } from 'vitest'
import { isFine, judgeComponent } from '#lib/needs/judge.ts'
import { askableAllergens } from '#lib/station/codes/askable.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { whoCanTaste } from '#lib/tasting/who-can-taste.ts'
import { keeps, NONE, NOT_SURE, TASTING, TASTING_STATION } from '#tests/support/tasting.ts'

const at = (
  component: string,
  told: Parameters<typeof whoCanTaste>[2],
  station: StationDocument = TASTING_STATION,
  on = TASTING.on,
) => whoCanTaste(station, { ...TASTING, on, components: [component] }, told)[0]

const whyOf = (component: string, told: ReturnType<typeof keeps>, station?: StationDocument) => {
  const verdict = at(component, { 1: told, 2: NONE }, station)?.tasters[0]?.verdict
  return verdict?.is === 'cannot' ? verdict.findings[0]?.why : verdict?.is
}

describe('who can taste', () => {
  test('[TB4] contains, may contain, shared contact and unknown each keep somebody away', () => {
    expect(whyOf('tuna', keeps('fish'))).toBe('contains')
    expect(whyOf('pita', keeps('sesame'))).toBe('may-contain')
    expect(whyOf('tuna', keeps('milk'))).toBe('contact')
    expect(whyOf('tuna', keeps('kosher'))).not.toBe('can')
    expect(whyOf('tuna', keeps('milk'), { ...TASTING_STATION, contacts: null })).toBe(
      'contact-unknown',
    )
    expect(whyOf('beans', keeps('fish'))).toBe('can')
  })

  test('[TB4] a need that is left out asks for no more than that it isn’t in it', () => {
    expect(whyOf('tuna', keeps('fish', 'leave-out'))).toBe('contains')
    expect(whyOf('tuna', keeps('milk', 'leave-out'))).toBe('can')
  })

  test('[TB4] it is the verdict of guests, need by need and food by food, and no caution passes', () => {
    const kitchen = { station: TASTING_STATION, soiled: [], lent: [], ready: [] }
    for (const { id } of TASTING_STATION.components)
      for (const code of askableAllergens(TASTING_STATION))
        for (const handling of ['keep-apart', 'leave-out'] as const) {
          const needs = [{ code, handling, reason: null }]
          const { level } = judgeComponent(kitchen, id, needs)
          const is = at(id, { 1: keeps(code, handling) })?.tasters[0]?.verdict.is
          expect([id, code, handling, is]).toEqual([
            id,
            code,
            handling,
            isFine(level) ? 'can' : 'cannot',
          ])
        }
  })

  test('[TB5] who isn’t sure, and who wasn’t asked, tastes nothing', () => {
    expect(at('beans', { 1: NOT_SURE })).toMatchObject({
      can: [],
      tasters: [{ verdict: { is: 'not-sure' } }, { verdict: { is: 'not-asked' } }],
    })
  })

  test('[TB6] who can’t has the first named who can; where nobody can, nobody is', () => {
    expect(at('tuna', { 1: keeps('fish'), 2: NONE })?.tasters).toMatchObject([
      { taster: 1, instead: 2 },
      { taster: 2, instead: null },
    ])
    expect(at('tuna', { 1: keeps('fish'), 2: keeps('egg') })?.tasters).toMatchObject([
      { instead: null },
      { instead: null },
    ])
  })

  test('[TB7] a label that was read too long before the day of the tasting is unread', () => {
    expect(at('beans', { 1: keeps('fish') })?.can).toEqual([1])
    expect(at('beans', { 1: keeps('fish') }, TASTING_STATION, '2027-06-01')?.can).toEqual([])
  })

  test('[TB4] a document that is damaged says nothing', () => {
    expect(() => at('turnip', { 1: keeps('fish') })).toThrow()
  })
})
