import { describe, expect, test } from 'vitest'
import { type Draft, EMPTY_DRAFT, settle, type Wish } from '#lib/rooms/orders/facts/draft.ts'
import { offerFor } from '#lib/rooms/orders/facts/offer.ts'
import { readBack } from '#lib/rooms/orders/views/read-back.ts'
import { readBackText, sayReadBack } from '#lib/rooms/orders/words/read-back-en.ts'
import type { Need } from '#lib/station/codes/codes.ts'
import { labelOf } from '#lib/station/label.ts'
import { isPluralIn, nameIn } from '#lib/station/name-in.ts'
import { sayCents } from '#lib/words/amounts-en.ts'
import { demoStation, type Given, given, ready, running } from '#tests/support/service.ts'

const NO: Wish = { placement: 'no', portions: 0 }

const said = (item: string, over: Partial<Draft> = {}, ...commands: Given[]): string => {
  const draft = { ...EMPTY_DRAFT, asked: over.needs ? 'needs' : 'none', item, ...over } as const
  const offer = offerFor(running(given(...commands)), draft.needs)
  const settled = settle(offer, draft)
  if (!settled) throw new Error('no item was chosen')
  return readBackText(
    sayReadBack(
      readBack(offer, settled),
      nameIn(demoStation),
      (cents) => sayCents(cents, demoStation.currency),
      isPluralIn(demoStation),
    ),
  )
}

const need = (code: Need['code'], handling: Need['handling'] = 'leave-out'): Need => ({
  code,
  handling,
  reason: null,
})

const outOf = (component: string): Given => ({
  type: 'correct',
  pan: `pan-${component}`,
  amount: 0,
})

describe('the read-back', () => {
  test('[C11] an unchanged item is said with its base and price, as it comes', () => {
    expect(said('harbor-tuna')).toBe('One harbor tuna with pita, as it comes. That’s $6.25.')
  })

  test('[N65] what no label lists is said so, kept apart or left out, and never called free', () => {
    const [pita] = demoStation.components.find(({ id }) => id === 'pita')?.ingredients ?? []
    const one = demoStation.ingredients.find(({ id }) => id === pita)
    if (!one) throw new Error('the demo station has no pita')
    const changed: Given = {
      type: 'changeLabel',
      ingredient: one.id,
      label: {
        ...labelOf(one),
        law: 'us-9',
        declarations: { ...one.declarations, peanut: 'not-listed' },
      },
    }
    for (const handling of ['keep-apart', 'leave-out'] as const) {
      const text = said('harbor-tuna', { needs: [need('peanut', handling)] }, changed)
      expect(text).toContain('Its labels name no peanut.')
      expect(text).not.toContain('free')
    }
    expect(said('harbor-tuna', { needs: [need('peanut')] })).not.toContain('labels name')
  })

  test('[C12] out of it today, asked for, not served and ruled out are told apart', () => {
    expect(said('garden-chicken', {}, outOf('cheddar'))).toBe(
      'One garden chicken with pita. We’re out of cheddar today. That’s $6.50.',
    )
    expect(said('garden-chicken', { wishes: { cheddar: NO } })).toBe(
      'One garden chicken with pita. No cheddar, as you asked. That’s $6.50.',
    )
    expect(said('harbor-tuna', { needs: [need('milk')] })).toBe(
      'One harbor tuna with pita. No cheddar, since it contains milk. Left out, not kept apart: a little milk can get in. That’s $6.25.',
    )
    expect(said('harbor-tuna', {}, { type: 'stopSelling', what: 'component', id: 'cheddar' })).toBe(
      'One harbor tuna with pita. We aren’t serving cheddar now. That’s $6.25.',
    )
  })

  test('[C12] all four in one order keep their own reasons', () => {
    const text = said(
      'bean-and-pepper',
      { wishes: { peppers: NO }, needs: [need('milk')] },
      outOf('almonds'),
      { type: 'stopSelling', what: 'component', id: 'slaw' },
    )
    expect(text).toContain('No roast peppers, as you asked.')
    expect(text).toContain('We’re out of toasted almonds today.')
    expect(text).toContain('We aren’t serving sesame slaw now.')
    expect(text).toContain('No cheddar or lemon yogurt sauce, since they contain milk.')
  })

  test('[C12] what may contain it, is not known, or is outside a diet is said so', () => {
    expect(said('bean-and-pepper', { needs: [need('peanut', 'keep-apart')] })).toContain(
      'No toasted almonds, since they may contain peanut.',
    )
    expect(said('bean-and-pepper', { needs: [need('vegan')] })).toContain(
      'No cheddar or lemon yogurt sauce, since they aren’t vegan.',
    )
    const unread = {
      ...running(given()),
      station: {
        ...demoStation,
        ingredients: demoStation.ingredients.map((one) =>
          one.id === 'cheddar' ? { ...one, declarations: {} } : one,
        ),
      },
    }
    const offer = offerFor(unread, [need('egg')])
    const settled = settle(offer, {
      ...EMPTY_DRAFT,
      asked: 'needs',
      needs: [need('egg')],
      item: 'garden-chicken',
    })
    expect(settled && readBack(offer, settled)).toContainEqual({
      say: 'need',
      need: 'egg',
      why: 'unknown',
      touches: null,
      components: ['cheddar'],
    })
  })

  test('[C13] the side, what is added, portions with what they cost, and fewer than wanted are said', () => {
    expect(
      said('garden-chicken', {
        wishes: {
          slaw: { placement: 'side', portions: 1 },
          almonds: { placement: 'in', portions: 1 },
          cheddar: { placement: 'in', portions: 3 },
        },
      }),
    ).toBe(
      'One garden chicken with pita. With toasted almonds. Sesame slaw on the side. 3 portions of cheddar, $1.20 more. That’s $7.70.',
    )
    const portion = running(given()).portions.cheddar?.amount ?? Number.NaN
    expect(
      said(
        'garden-chicken',
        { wishes: { cheddar: { placement: 'in', portions: 2 } } },
        { type: 'correct', pan: 'pan-cheddar', amount: portion },
      ),
    ).toContain('Only 1 portion of cheddar left.')
  })

  test('[C13] a usual side is said as such, and said otherwise when the guest wants it in', () => {
    expect(said('bean-and-pepper')).toContain('Lemon yogurt sauce on the side.')
    expect(
      said('bean-and-pepper', {
        wishes: { 'yogurt-sauce': { placement: 'in', portions: 1 } },
      }),
    ).toContain('Lemon yogurt sauce in it, not on the side.')
  })

  test('[C14] another base is said with the reason why the usual one isn’t in it', () => {
    expect(said('harbor-tuna', { base: 'rice' })).toBe(
      'One harbor tuna with brown rice. That’s $6.25.',
    )
    expect(said('harbor-tuna', {}, outOf('pita'))).toContain(
      'One harbor tuna with brown rice. We’re out of pita today.',
    )
    expect(said('garden-chicken', { needs: [need('wheat')] })).toContain(
      'One garden chicken with brown rice. Not with pita, since it contains wheat.',
    )
  })

  test('[C46] what is left out only and can still get in is said', () => {
    expect(said('harbor-tuna', { needs: [need('milk')] })).toContain(
      'Left out, not kept apart: a little milk can get in.',
    )
    expect(said('bean-and-pepper', { needs: [need('vegetarian'), need('almond')] })).toContain(
      'a little almond can get in, and it can touch what isn’t vegetarian.',
    )
    expect(said('garden-chicken', { needs: [need('no-alcohol')] })).not.toContain('Left out')
    expect(said('garden-chicken', { needs: [need('milk', 'keep-apart')] })).not.toContain(
      'Left out',
    )
  })

  test('[C15] a need kept apart is said with what can’t be promised, and never as safe', () => {
    const apart = said('garden-chicken', { needs: [need('milk', 'keep-apart')] })
    expect(apart).toContain('It’s made on a shared line: we can’t promise that no milk gets in.')
    expect(said('garden-chicken', { needs: [need('milk')] })).not.toContain('shared line')
    expect(apart).not.toMatch(/safe|free of|allergen-free/i)
  })

  test('[C74] celiac disease that is left out only is said as what the guest told', () => {
    const gluten = { ...need('gluten'), reason: 'coeliac' } as const
    const told = 'As you told us: gluten left out only, not kept apart.'
    const words = said('harbor-tuna', { needs: [gluten], base: 'rice' })
    expect(words).toContain(told)
    expect(words).not.toMatch(/celiac/i)
    for (const over of [{ handling: 'keep-apart' }, { reason: 'diet' }, { reason: null }] as const)
      expect(said('harbor-tuna', { needs: [{ ...gluten, ...over }], base: 'rice' })).not.toContain(
        'As you told us',
      )
    const both = [gluten, { ...gluten, code: 'milk' }]
    expect(said('harbor-tuna', { needs: both, base: 'rice' })).toContain(
      'As you told us: gluten and milk left out only, not kept apart.',
    )
  })

  test('[C39] cautions, their acceptance and back-up pans are said, in the words of the read-back', () => {
    const sesame = [need('sesame', 'keep-apart')]
    const state = running(ready())
    const offer = offerFor(state, sesame)
    const draft = { ...EMPTY_DRAFT, asked: 'needs', needs: sesame, item: 'garden-chicken' } as const
    const words = (over: Partial<Draft>) => {
      const settled = settle(offer, { ...draft, ...over })
      if (!settled) throw new Error('no item was chosen')
      return readBackText(
        sayReadBack(readBack(offer, settled), nameIn(demoStation), String, isPluralIn(demoStation)),
      )
    }
    expect(words({ base: 'pita' })).toContain('The label of pita warns: may contain sesame.')
    expect(words({ base: 'pita' })).not.toContain('You accept that')
    expect(words({})).toContain('from a covered pan with its own scoop.')
    expect(words({})).not.toMatch(/safe|free of/i)
    const settled = settle(offer, { ...draft, base: 'pita' })
    const accepted = settled && {
      ...settled,
      choice: { ...settled.choice, caution: 1 },
    }
    expect(accepted && readBack(offer, accepted)).toContainEqual({ say: 'accepted' })
  })
})
