import { describe, expect, test } from 'vitest'
import { serviceStage } from '#lib/rooms/day/views/service-stage.ts'
import { type Draft, EMPTY_DRAFT, settle } from '#lib/rooms/orders/facts/draft.ts'
import { offerFor } from '#lib/rooms/orders/facts/offer.ts'
import { itemRows, panFace, ticketSentBy } from '#lib/rooms/orders/views/counter.ts'
import { tapCycle } from '#lib/rooms/orders/views/tap-cycle.ts'
import { ticketsToChange } from '#lib/rooms/orders/views/tickets-to-change.ts'
import type { BuildChoice } from '#lib/service/events/build-choice.ts'
import { NOT_OPENED } from '#lib/service/state.ts'
import { askableAllergens } from '#lib/station/codes/askable.ts'
import type { Handling, Need } from '#lib/station/codes/codes.ts'
import { CLAIMS, DIETS } from '#lib/station/codes/diets.ts'
import { findPan, itemOf, pansOf } from '#lib/station/find.ts'
import {
  choose,
  codeOf,
  demoStation,
  type Given,
  given,
  needs,
  openedService,
  ready,
  running,
  send,
  type Told,
  when,
} from '#tests/support/service.ts'

const ALL = given()
const READY = ready()
const NO_CHEDDAR = given({ type: 'correct', pan: 'pan-cheddar', amount: 0 })

const draft = (item: string, over: Partial<Draft> = {}): Draft => ({
  ...EMPTY_DRAFT,
  asked: 'none',
  item,
  ...over,
})

const apart = (...codes: Need['code'][]): Need[] =>
  codes.map((code) => ({ code, handling: 'keep-apart', reason: null }))

const out = (...codes: Need['code'][]): Need[] =>
  codes.map((code) => ({ code, handling: 'leave-out', reason: null }))

const rowOf = (told: Told, item: string, list: readonly Need[] = [], over?: Partial<Draft>) => {
  const offer = offerFor(running(told), list)
  const rows = itemRows(offer, over ? draft(item, over) : EMPTY_DRAFT)
  const row = rows.find((one) => one.item.id === item)
  if (!row) throw new Error(`no row of ${item}`)
  return row
}

const marksOf = (...args: Parameters<typeof rowOf>) =>
  Object.fromEntries(
    pansOf(demoStation).map((pan, index) => [pan.component, rowOf(...args).marks[index]]),
  )

const settledOf = (told: Told, made: Draft) => {
  const settled = settle(offerFor(running(told), made.needs), made)
  if (!settled) throw new Error('no item was chosen')
  return settled
}

const faceOf = (told: Told, made: Draft | null, component: string) => {
  const offer = offerFor(running(told), made?.needs ?? [])
  const pan = findPan(demoStation, `pan-${component}`)
  if (!pan) throw new Error(`no pan of ${component}`)
  return panFace(offer, made && settle(offer, made), pan)
}

describe('the menu over the line', () => {
  test('[C1] an item shows in the pans’ own columns what it takes, on the side, and can be added', () => {
    expect(marksOf(ALL, 'bean-and-pepper')).toEqual({
      pita: 'could',
      rice: 'in',
      chicken: 'none',
      beans: 'in',
      peppers: 'in',
      tuna: 'none',
      slaw: 'in',
      cheddar: 'in',
      almonds: 'in',
      'yogurt-sauce': 'side',
    })
    expect(rowOf(ALL, 'bean-and-pepper').marks).toHaveLength(pansOf(demoStation).length)
  })

  test('[C1] what is gone, not sold, ruled out or said no to has a mark of its own', () => {
    const told = given(
      { type: 'correct', pan: 'pan-cheddar', amount: 0 },
      { type: 'stopSelling', what: 'component', id: 'peppers' },
    )
    const marks = marksOf(told, 'bean-and-pepper', apart('sesame'), {
      needs: apart('sesame'),
      wishes: { almonds: { placement: 'no', portions: 0 } },
    })
    expect(marks).toMatchObject({
      cheddar: 'gone',
      peppers: 'gone',
      slaw: 'need',
      almonds: 'no',
    })
  })

  test('[C2] a row says how many are left for this guest, and what it comes without', () => {
    expect(rowOf(ALL, 'garden-chicken')).toMatchObject({ left: 24, without: [], blocked: null })
    expect(rowOf(NO_CHEDDAR, 'garden-chicken')).toMatchObject({ left: 24, without: ['cheddar'] })
    const fewRice = given({ type: 'correct', pan: 'pan-rice', amount: 0 })
    expect(rowOf(fewRice, 'bean-and-pepper')).toMatchObject({ left: 24, insteadBase: 'pita' })
    expect(rowOf(fewRice, 'bean-and-pepper', apart('wheat'))).toMatchObject({
      left: 0,
      blocked: { component: 'rice', standing: { kind: 'gone' } },
    })
  })

  test('[C2] an item whose heart is ruled out, gone or not sold names it, and has none left', () => {
    expect(rowOf(ALL, 'garden-chicken', out('vegetarian'))).toMatchObject({
      left: 0,
      blocked: { component: 'chicken', standing: { kind: 'need', finding: { why: 'contains' } } },
    })
    expect(rowOf(ALL, 'harbor-tuna', apart('soy')).blocked).toMatchObject({
      component: 'tuna',
      standing: { kind: 'need', finding: { why: 'unknown' } },
    })
    const stopped = given({ type: 'stopSelling', what: 'item', id: 'harbor-tuna' })
    expect(rowOf(stopped, 'harbor-tuna')).toMatchObject({ left: 0, blocked: { component: null } })
  })
})

describe('what becomes of a wish', () => {
  const codes = [...askableAllergens(demoStation), ...DIETS, ...CLAIMS]
  const every: readonly Need[] = codes.flatMap((code) =>
    (['keep-apart', 'leave-out'] satisfies Handling[]).map((handling) => ({
      code,
      handling,
      reason: null,
    })),
  )

  test('[C3] for every need and item, what the screen leaves out is what the server refuses', () => {
    let [refused, cautioned, sold] = [0, 0, 0]
    for (const need of every)
      for (const item of demoStation.items) {
        const made = draft(item.id, { asked: 'needs', needs: [need] })
        const { choice, parts, blocked, toAccept } = settledOf(READY, made)
        const server = codeOf(when(READY, send({ ...choice, ...needs(need) })))
        const said = `${item.id} ${need.code} ${need.handling}`
        if (blocked) {
          expect(server, said).toMatch(/contain|unknown-declaration|contact|cannot-leave-out/)
          continue
        }
        expect(server, said).toBe(toAccept.length > 0 ? 'caution' : null)
        if (toAccept.length === 0) sold += 1
        if (toAccept.length > 0) cautioned += 1
        for (const { part, leftFor } of parts) {
          if (leftFor === null) continue
          const taken = { placement: 'in', portions: 1, because: 'asked' } as const
          const forced = { ...choice, parts: { ...choice.parts, [part.component]: taken } }
          expect(codeOf(when(READY, send({ ...forced, agreed: true }))), said).toMatch(
            /contain|unknown-declaration|contact|caution/,
          )
          refused += 1
        }
      }
    expect(refused).toBeGreaterThan(20)
    expect(cautioned).toBeGreaterThan(0)
    expect(sold).toBeGreaterThan(20)
  })

  test('[C3] a caution leaves an optional part out for keep apart, and is a note for leave out', () => {
    const almonds = (list: Need[]) =>
      settledOf(ALL, draft('bean-and-pepper', { asked: 'needs', needs: list })).choice.parts.almonds
    expect(almonds(apart('peanut'))).toEqual({ placement: 'no', portions: 0, because: 'need' })
    expect(almonds(out('peanut'))).toMatchObject({ placement: 'in' })
  })

  test('[C4] an optional component that is gone or not sold is no by itself, and is back with it', () => {
    const stopped = given({ type: 'stopSelling', what: 'component', id: 'cheddar' })
    for (const told of [NO_CHEDDAR, stopped])
      expect(settledOf(told, draft('garden-chicken')).choice.parts.cheddar).toEqual({
        placement: 'no',
        portions: 0,
        because: 'gone',
      })
    expect(settledOf(ALL, draft('garden-chicken')).choice.parts.cheddar).toMatchObject({
      placement: 'in',
    })
  })

  test('[C4] what the guest said no to stays asked for when it is gone', () => {
    const wishes = { cheddar: { placement: 'no', portions: 0 } } as const
    const { choice } = settledOf(NO_CHEDDAR, draft('garden-chicken', { wishes }))
    expect(choice.parts.cheddar).toMatchObject({ because: 'asked' })
  })

  test('[C4] more portions than are left become what is left', () => {
    const two = given({ type: 'stopSelling', what: 'component', id: 'almonds' })
    const few = offerFor(running(two), [], { line: { cheddar: 38 * cheddarMg }, behind: {} })
    const wishes = { cheddar: { placement: 'in', portions: 4 } } as const
    expect(settle(few, draft('garden-chicken', { wishes }))?.choice.parts.cheddar).toMatchObject({
      placement: 'in',
      portions: 2,
    })
  })

  test('[C5] a base that can’t be had gives way to another of the item’s', () => {
    const needsWheat = { asked: 'needs', needs: apart('wheat') } as const
    expect(settledOf(ALL, draft('garden-chicken', needsWheat)).base).toMatchObject({
      component: 'rice',
      because: 'instead',
      wanted: 'pita',
      wantedStanding: { kind: 'need', finding: { need: 'wheat' } },
    })
    expect(settledOf(ALL, draft('garden-chicken')).base).toMatchObject({ because: 'usual' })
    expect(settledOf(ALL, draft('garden-chicken', { base: 'rice' })).base).toMatchObject({
      component: 'rice',
      because: 'asked',
    })
  })
})

const cheddarMg = running(ALL).portions.cheddar?.amount ?? Number.NaN

describe('taps on a pan', () => {
  const cycle = (item: string, component: string) => {
    const found = itemOf(demoStation, item)
    const part = found.parts.find((one) => one.component === component)
    const cups = demoStation.components.find((one) => one.id === component)?.side ?? false
    if (!part) throw new Error(`${item} has no ${component}`)
    return tapCycle(found, part, cups)
  }

  test('[C6] taps go from the usual to no first, then to the other placement', () => {
    expect(cycle('garden-chicken', 'slaw')).toEqual(['in', 'no', 'side'])
    expect(cycle('bean-and-pepper', 'yogurt-sauce')).toEqual(['side', 'no', 'in'])
    expect(cycle('harbor-tuna', 'peppers')).toEqual(['no', 'in', 'side'])
  })

  test('[C6] on the side is there only where cups are, no only where it can be left out', () => {
    expect(cycle('garden-chicken', 'cheddar')).toEqual(['in', 'no'])
    expect(cycle('garden-chicken', 'chicken')).toEqual(['in'])
  })

  test('[C7] a pan says what is taken, what can be, and why not', () => {
    const made = draft('garden-chicken', { asked: 'needs', needs: apart('sesame') })
    expect(faceOf(NO_CHEDDAR, null, 'pita')).toEqual({ kind: 'idle' })
    expect(faceOf(NO_CHEDDAR, null, 'cheddar')).toMatchObject({ kind: 'cannot' })
    expect(faceOf(NO_CHEDDAR, made, 'cheddar')).toEqual({
      kind: 'cannot',
      standing: { kind: 'gone' },
    })
    expect(faceOf(READY, made, 'slaw')).toMatchObject({
      kind: 'cannot',
      standing: { kind: 'need', finding: { need: 'sesame', why: 'contains' } },
    })
    expect(faceOf(READY, made, 'pita')).toMatchObject({
      kind: 'other-base',
      asks: { why: 'may-contain' },
    })
    expect(faceOf(READY, made, 'rice')).toEqual({ kind: 'base', asks: null })
    expect(faceOf(ALL, draft('garden-chicken'), 'rice')).toEqual({
      kind: 'other-base',
      asks: null,
    })
    expect(faceOf(READY, made, 'tuna')).toEqual({ kind: 'idle' })
    expect(faceOf(READY, draft('garden-chicken'), 'almonds')).toEqual({ kind: 'could', asks: null })
    expect(faceOf(READY, made, 'yogurt-sauce')).toMatchObject({
      kind: 'left-out',
      finding: { why: 'contact' },
    })
    expect(faceOf(READY, draft('garden-chicken'), 'peppers')).toEqual({
      kind: 'in',
      portions: 1,
      more: 50,
      asks: null,
    })
  })

  test('[C7] no more portions are offered than the most, or than are left', () => {
    const four = draft('garden-chicken', { wishes: { cheddar: { placement: 'in', portions: 4 } } })
    expect(faceOf(ALL, four, 'cheddar')).toEqual({
      kind: 'in',
      portions: 4,
      more: null,
      asks: null,
    })
    const lastOne = given({ type: 'correct', pan: 'pan-cheddar', amount: cheddarMg })
    expect(faceOf(lastOne, draft('garden-chicken'), 'cheddar')).toMatchObject({ more: null })
  })
})

describe('what the screen is about', () => {
  test('[C8] no orders are taken where no service is open', () => {
    const stage = (told: Told, service: string | null = 's-lunch') =>
      serviceStage({ welcomed: true, service, state: told.state })
    expect(serviceStage({ welcomed: false, service: null, state: NOT_OPENED })).toBe('connecting')
    expect(stage({ state: NOT_OPENED, events: [] }, null)).toBe('no-service')
    expect(stage(openedService())).toBe('open')
    expect(stage(given({ type: 'close' }))).toBe('closed')
  })

  test('[C9] a sent ticket is found by its command, open or past', () => {
    const sent = given(send(choose('garden-chicken')))
    const command = running(sent).tickets.t1?.sentBy ?? ''
    expect(ticketSentBy(sent.state, command)).toBe(1)
    const over = given(send(choose('garden-chicken')), { type: 'cancel', ticket: 1, letter: 'A' })
    expect(ticketSentBy(over.state, command)).toBe(1)
    expect(ticketSentBy(sent.state, 'another')).toBeNull()
  })

  test('[C10] open builds are listed newest first, with what can still be done to each', () => {
    const told = given(
      send(choose('garden-chicken')),
      send(choose('bean-and-pepper'), choose('harbor-tuna')),
      { type: 'start', ticket: 1, letter: 'A' },
      { type: 'cancel', ticket: 1, letter: 'A' },
      { type: 'start', ticket: 2, letter: 'A' },
      { type: 'finish', ticket: 2, letter: 'A' },
    )
    expect(
      ticketsToChange(running(told)).map(({ ticket, build, canChange, canCancel }) => [
        `${ticket.number}${build.letter}`,
        canChange,
        canCancel,
      ]),
    ).toEqual([
      ['2A', false, true],
      ['2B', true, true],
      ['1A', false, false],
    ])
  })

  test('[C28] the list shows no name with a need, nor beside another build that has one', () => {
    const named = (...builds: readonly BuildChoice[]): Given => ({
      type: 'send',
      builds,
      paid: false,
      readBack: true,
      name: 'Kim',
    })
    const kept: BuildChoice = {
      ...choose('bean-and-pepper'),
      base: 'rice',
      asked: 'needs',
      needs: out('fish'),
      agreed: true,
    }
    const told = given(
      named(choose('garden-chicken')),
      named(choose('garden-chicken'), kept),
      send(choose('garden-chicken')),
    )
    const shown = ticketsToChange(running(told)).map(({ ticket, nameKey }) => [
      ticket.number,
      nameKey,
    ])
    const first = running(told).tickets.t1?.sentBy ?? 'none'
    expect(shown).toEqual([
      [3, null],
      [2, null],
      [2, null],
      [1, first],
    ])
  })
})
