import { describe, expect, test } from 'vitest'
import { kitchenOf } from '#lib/rooms/care/facts/kitchen-of.ts'
import { EMPTY_DRAFT, foodOfSettled } from '#lib/rooms/orders/facts/draft.ts'
import { offerFor } from '#lib/rooms/orders/facts/offer.ts'
import { acceptedSince, cautionNumbers } from '#lib/rooms/orders/views/acceptance.ts'
import { itemRows } from '#lib/rooms/orders/views/counter.ts'
import type { Act } from '#lib/rooms/orders/views/counter-act.ts'
import { commandOf, nextStep } from '#lib/rooms/orders/views/next-step.ts'
import { act } from '#lib/rooms/orders/views/order-act.ts'
import { IDLE, type Ordering, settleAll } from '#lib/rooms/orders/views/ordering.ts'
import type { BuildChoice } from '#lib/service/events/build-choice.ts'
import type { RunningState } from '#lib/service/state.ts'
import { askableAllergens } from '#lib/station/codes/askable.ts'
import type { Need } from '#lib/station/codes/codes.ts'
import { DIETS } from '#lib/station/codes/diets.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { verdictsFor } from '#tests/support/counter-verdicts.ts'
import { codeOf, demoStation, given, onward, ready, running, when } from '#tests/support/service.ts'

const READY = ready()
const STATE = running(READY)
const NOBODY = running(given())

const taps = (from: Ordering, state: RunningState, ...list: Act[]): Ordering =>
  list.reduce((so, one) => act(so, one, state), from)

const none: Act = { act: 'asked-none' }
const need = (code: string): Act => ({ act: 'need', code })
const item = (id: string): Act => ({ act: 'choose', item: id })
const pan = (component: string): Act => ({ act: 'tap', component })
const SAID: Act = { act: 'said-needs' }
const AGREE: Act = { act: 'agree' }
const turn = (index = 0): Act => ({ act: 'turn', index })

const settledIn = (ordering: Ordering, state = STATE, index = 0) => {
  const settled = settleAll(ordering, state)[index]?.settled
  if (!settled) throw new Error('no item was chosen')
  return settled
}

describe('verdict and pans', () => {
  const lists = (codes: readonly string[]): Need[][] =>
    codes.flatMap((code) =>
      (['keep-apart', 'leave-out'] as const).map((handling) => [{ code, handling, reason: null }]),
    )

  test('[C33] with full pans an item’s row says what its verdict says', () => {
    const kinds = new Map<string, number>()
    for (const state of [STATE, NOBODY])
      for (const needs of lists([...askableAllergens(demoStation), 'almond', ...DIETS])) {
        const verdicts = verdictsFor(kitchenOf(state), needs)
        const offer = offerFor(state, needs)
        for (const row of itemRows(offer, EMPTY_DRAFT)) {
          const verdict = verdicts[row.item.id]
          const said = `${row.item.id} ${JSON.stringify(needs)}`
          if (!verdict) throw new Error(said)
          const isChanged = row.without.length > 0 || row.insteadBase !== null
          const kind = row.blocked
            ? 'no'
            : row.asks
              ? 'ask'
              : isChanged || row.bases.length > 0
                ? 'with-change'
                : 'fits'
          expect(kind, said).toBe(verdict.kind)
          if (kind !== 'no') expect(row.without, said).toEqual(verdict.leaveOut)
          kinds.set(kind, (kinds.get(kind) ?? 0) + 1)
        }
      }
    expect([...kinds.keys()].sort()).toEqual(['ask', 'fits', 'no', 'with-change'])
  })
})

describe('equal bases', () => {
  const third: StationDocument = {
    ...demoStation,
    components: demoStation.components.map((one) =>
      one.id === 'peppers' ? { ...one, ingredients: ['brown-rice'] } : one,
    ),
    items: demoStation.items.map((one) =>
      one.id === 'garden-chicken'
        ? {
            ...one,
            base: { choices: ['pita', 'rice', 'peppers'], usual: 'pita' },
            parts: one.parts.filter((part) => part.component !== 'peppers'),
          }
        : one,
    ),
  }
  const state: RunningState = { ...STATE, station: third }
  const wheatOut = taps(
    IDLE,
    state,
    need('wheat'),
    { act: 'handling', code: 'wheat' },
    SAID,
    item('garden-chicken'),
  )

  test('[C34] several bases that fit equally are for the guest to choose, and nothing is sent before', () => {
    expect(nextStep(wheatOut, state)).toEqual({
      step: 'base',
      index: 0,
      bases: ['rice', 'peppers'],
    })
    expect(settledIn(wheatOut, state).choice.base).toBeNull()
    expect(commandOf(wheatOut, state)).toBeNull()
    const chosen = taps(wheatOut, state, pan('peppers'))
    expect(nextStep(chosen, state)).toEqual({ step: 'send' })
    expect(settledIn(chosen, state).choice.base).toBe('peppers')
  })
})

describe('cautions', () => {
  /** The pita's label warns of sesame, and the rice stands beside it. */
  const sesame = taps(IDLE, NOBODY, need('sesame'), SAID, item('garden-chicken'))
  const withSesame = taps(IDLE, STATE, need('sesame'), SAID, item('garden-chicken'), pan('pita'))

  const accept = (ordering: Ordering): { state: RunningState; caution: number | null } => {
    const { choice, toAccept } = settledIn(ordering)
    const told = onward(READY, { type: 'acceptCaution', build: choice, reason: 'label-read' })
    const state = running(told)
    return { state, caution: acceptedSince(state.cautions, new Set(), choice, toAccept) }
  }

  test('[C35] an optional part with a caution is left out until a tap asks for it', () => {
    const left = settledIn(sesame, NOBODY).parts.find((one) => one.part.component === 'cheddar')
    expect(left).toMatchObject({ placement: 'no', because: 'need', leftFor: { why: 'contact' } })
    const asked = taps(sesame, NOBODY, pan('cheddar'))
    const cheddar = settledIn(asked, NOBODY).parts.find((one) => one.part.component === 'cheddar')
    expect(cheddar).toMatchObject({ placement: 'in', portions: 1, leftFor: null })
    const back = settledIn(taps(asked, NOBODY, pan('cheddar')), NOBODY)
    expect(back.choice.parts.cheddar).toMatchObject({ placement: 'no', because: 'asked' })
  })

  test('[C35] what can’t be left out asks for the person in charge', () => {
    expect(settledIn(withSesame).toAccept).toMatchObject([
      { component: 'pita', why: 'may-contain' },
    ])
    expect(nextStep(withSesame, STATE)).toEqual({ step: 'accept', index: 0 })
    expect(commandOf(withSesame, STATE)).toBeNull()
  })

  test('[C36] with nobody in charge, what is kept apart isn’t sent, and signing on is next', () => {
    expect(nextStep(sesame, NOBODY)).toEqual({ step: 'sign-on', index: 0 })
    expect(commandOf(sesame, NOBODY)).toBeNull()
    const plain = taps(IDLE, NOBODY, none, item('garden-chicken'))
    expect(nextStep(plain, NOBODY)).toEqual({ step: 'send' })
  })

  test('[C37] an accepted caution goes with the build, which the server takes', () => {
    const { state, caution } = accept(withSesame)
    expect(caution).toBe(1)
    const food = foodOfSettled(settledIn(withSesame, state))
    const accepted = taps(
      withSesame,
      state,
      { act: 'in-charge' },
      { act: 'caution-accepted', caution: 1, food },
    )
    expect(accepted).toMatchObject({ step: 'choose' })
    expect(nextStep(accepted, state)).toEqual({ step: 'turn', index: 0 })
    const agreed = taps(accepted, state, turn(), AGREE)
    expect(commandOf(agreed, state)).toMatchObject({
      readBack: true,
      builds: [{ caution: 1, agreed: true }],
    })
    const command = commandOf(agreed, state)
    const build = settledIn(withSesame).choice
    const told = onward(READY, { type: 'acceptCaution', build, reason: 'label-read' })
    expect(command && codeOf(when(told, command, { by: 'counter' }))).toBeNull()
    const changed = taps(agreed, state, pan('cheddar'))
    expect(settledIn(changed, state).choice).toMatchObject({ caution: null, agreed: false })
    expect(nextStep(changed, state)).toMatchObject({ step: 'accept' })
  })

  test('[C37] an acceptance of before, a used one, or one of something else isn’t taken', () => {
    const { state } = accept(withSesame)
    const { choice, toAccept } = settledIn(withSesame)
    const before = cautionNumbers(state.cautions)
    expect(acceptedSince(state.cautions, before, choice, toAccept)).toBeNull()
    const other: BuildChoice = { ...choice, item: 'harbor-tuna' }
    expect(acceptedSince(state.cautions, new Set(), other, toAccept)).toBeNull()
    const milk = [{ code: 'milk', handling: 'keep-apart', reason: null }] as const
    expect(
      acceptedSince(state.cautions, new Set(), { ...choice, needs: milk }, toAccept),
    ).toBeNull()
    const [first] = toAccept
    const more = first ? [...toAccept, { ...first, component: 'rice' }] : []
    expect(acceptedSince(state.cautions, new Set(), choice, more)).toBeNull()
    const c1 = state.cautions.c1
    const used = c1 ? { c1: { ...c1, build: '1A' } } : {}
    expect(acceptedSince(used, new Set(), choice, toAccept)).toBeNull()
  })
})

describe('agreeing', () => {
  const milk = (state: RunningState) =>
    taps(IDLE, state, need('milk'), SAID, item('garden-chicken'))

  test('[C38] what is kept apart is sent only after its guest agreed to what stands there now', () => {
    const said = milk(STATE)
    expect(nextStep(said, STATE)).toEqual({ step: 'turn', index: 0 })
    expect(commandOf(said, STATE)).toBeNull()
    expect(commandOf(taps(said, STATE, AGREE), STATE)).toBeNull()
    expect(commandOf(taps(said, STATE, turn(), { act: 'back' }), STATE)).toBeNull()
    const agreed = taps(said, STATE, turn(), AGREE)
    expect(agreed.step).toBe('choose')
    expect(commandOf(agreed, STATE)).toMatchObject({
      readBack: true,
      builds: [{ agreed: true, asked: 'needs' }],
    })
    const command = commandOf(agreed, STATE)
    expect(command && codeOf(when(READY, command, { by: 'counter' }))).toBeNull()
  })

  test('[C38] a change of the choice, of the pans or of what touches it clears the agreement', () => {
    const agreed = taps(milk(STATE), STATE, turn(), AGREE)
    const changed = taps(agreed, STATE, pan('peppers'))
    expect(settledIn(changed).choice.agreed).toBe(false)
    expect(nextStep(changed, STATE)).toMatchObject({ step: 'turn' })
    const noPeppers = running(ready({ type: 'correct', pan: 'pan-peppers', amount: 0 }))
    expect(settledIn(agreed, noPeppers).choice.agreed).toBe(false)
    const soiled = running(ready({ type: 'soilPan', pan: 'pan-peppers', by: 'cheddar' }))
    expect(settledIn(agreed, soiled).choice.agreed).toBe(false)
    expect(commandOf(agreed, soiled)).toBeNull()
  })

  test('[C45] each guest of a ticket agrees to their own build', () => {
    const two = taps(
      milk(STATE),
      STATE,
      { act: 'another' },
      need('egg'),
      SAID,
      item('garden-chicken'),
    )
    const one = taps(two, STATE, turn(1), AGREE)
    expect(nextStep(one, STATE)).toEqual({ step: 'turn', index: 0 })
    expect(commandOf(one, STATE)).toBeNull()
    const both = taps(one, STATE, turn(0), AGREE)
    expect(commandOf(both, STATE)).toMatchObject({
      builds: [
        { agreed: true, needs: [{ code: 'milk' }] },
        { agreed: true, needs: [{ code: 'egg' }] },
      ],
    })
  })

  test('[C40] the next build is asked again; the same guest is one tap', () => {
    const next = taps(milk(STATE), STATE, { act: 'another' })
    expect(next).toMatchObject({ step: 'ask', current: 1 })
    expect(next.drafts[1]).toMatchObject({ asked: null, needs: [] })
    const same = taps(next, STATE, { act: 'same-guest', index: 0 })
    expect(same).toMatchObject({ step: 'choose', current: 1 })
    expect(same.drafts[1]).toMatchObject({ asked: 'needs', needs: [{ code: 'milk' }], item: null })
  })
})

describe('a checker that fails', () => {
  const damaged: RunningState = {
    ...STATE,
    station: {
      ...demoStation,
      contacts: [{ id: 'torn', kind: 'beside', components: ['pita', 'nothing'] }],
    },
  }

  test('[C43] where needs can’t be checked, nothing is sold to a guest who has some', () => {
    const milk = taps(IDLE, damaged, need('milk'), SAID)
    const offer = settleAll(milk, damaged)[0]?.offer
    if (!offer) throw new Error('there is no draft')
    for (const row of itemRows(offer, EMPTY_DRAFT))
      expect(row).toMatchObject({ left: 0, blocked: { standing: { kind: 'unchecked' } } })
    expect(taps(milk, damaged, item('garden-chicken')).drafts[0]?.item).toBeNull()
  })

  test('[C43] and a guest without needs is served', () => {
    const plain = taps(IDLE, damaged, none, item('garden-chicken'))
    expect(commandOf(plain, damaged)).not.toBeNull()
  })
})
