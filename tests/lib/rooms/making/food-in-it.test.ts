import { describe, expect, it } from 'vitest'
import { foodInIt } from '#lib/rooms/making/facts/food-in-it.ts'
import { levelOf } from '#lib/rooms/pans/facts/levels.ts'
import { read } from '#tests/support/food.ts'
import {
  accountOf,
  at,
  buildIn,
  changePan,
  choose,
  codeOf,
  eventsOf,
  type Given,
  given,
  happening,
  inPan,
  needs,
  ofPortions,
  onward,
  ready,
  refusalOf,
  running,
  send,
  type Told,
  when,
} from '#tests/support/service.ts'
import { onTheSide, stopped as stops } from '#tests/support/stopped.ts'

const all = Object.keys(buildIn(given(send(onTheSide)), '1A').takes)
const without = (...ids: readonly string[]) => all.filter((id) => !ids.includes(id))
const start: Given = { type: 'start', ...at('1A'), read: true }
const cancel: Given = { type: 'cancel', ...at('1A') }
const answer = (inIt?: readonly string[], foodInIt = true): Given => ({
  type: 'acknowledge',
  ...at('1A'),
  foodInIt,
  ...(inIt ? { inIt } : {}),
})
const stopped = stops.onTheSide
const left = (told: Told, component: string) => levelOf(running(told), component).remaining
const wasted = (told: Told) =>
  Object.fromEntries(all.map((id) => [id, accountOf(told, id).wasted] as const))

describe('what of a stopped build was in it', () => {
  it('[S136] is wasted; what wasn’t is back on sale, and so is a lidded cup', () => {
    const before = given()
    const told = onward(stopped, answer(without('chicken', 'yogurt-sauce')))
    const portion = buildIn(stopped, '1A').takes
    expect(wasted(told)).toEqual({ ...portion, chicken: 0, 'yogurt-sauce': 0 })
    expect(inPan(told, 'pan-chicken')).toBe(inPan(before, 'pan-chicken'))
    for (const id of ['chicken', 'yogurt-sauce'])
      expect([accountOf(told, id).onTickets, left(told, id)]).toEqual([0, left(before, id)])
    expect(left(told, 'slaw')).toBe(left(before, 'slaw') - ofPortions('slaw', 1))
    expect(buildIn(told, '1A').state).toBe('cancelled')
  })

  it('[S136] is all of it where nothing else is said, and the event says what was told', () => {
    const [whole] = eventsOf(when(stopped, answer()))
    expect(whole).not.toHaveProperty('inIt')
    expect(wasted(onward(stopped, answer()))).toEqual(buildIn(stopped, '1A').takes)
    const [part] = eventsOf(when(stopped, answer(['pita', 'slaw'])))
    expect(part).toMatchObject({ inIt: ['pita', 'slaw'], foodInIt: true })
    const pans = part?.type === 'stopAcknowledged' ? part.wasted.map(({ pan }) => pan) : []
    expect(pans).toEqual(['pan-pita', 'pan-slaw'])
  })

  it('[S136] is booked beyond the count only where it was in it', () => {
    const none = onward(
      stopped,
      { type: 'correct', pan: 'pan-slaw', amount: 0 },
      { type: 'correct', pan: 'pan-chicken', amount: 0 },
    )
    const [event] = eventsOf(when(none, answer(without('chicken'))))
    expect(event).toMatchObject({ uncounted: { slaw: ofPortions('slaw', 1) } })
  })

  it('[S136] keeps on tickets what it is made of again', () => {
    const changed = given(send(onTheSide), start, {
      type: 'change',
      readBack: true,
      ...at('1A'),
      to: choose('garden-chicken', { slaw: 'no' }),
    })
    const told = onward(changed, answer(without('chicken', 'slaw')))
    expect(buildIn(told, '1A').state).toBe('waiting')
    expect(accountOf(told, 'chicken')).toMatchObject({
      onTickets: ofPortions('chicken', 1),
      wasted: 0,
    })
    expect(accountOf(told, 'slaw')).toMatchObject({ onTickets: 0, wasted: 0 })
    expect(accountOf(told, 'pita').wasted).toBe(ofPortions('pita', 1))
  })

  it('[S137] is of what the build takes, something, and named once', () => {
    const refused = (inIt: readonly string[], foodIn = true) =>
      refusalOf(when(stopped, answer(inIt, foodIn)))
    expect(refused(['almonds-of-elsewhere'])).toEqual({
      code: 'not-in-build',
      build: '1A',
      component: 'almonds-of-elsewhere',
    })
    const unclear = { code: 'food-in-it-unclear', build: '1A' }
    expect(refused([])).toEqual(unclear)
    expect(refused(['pita', 'pita'])).toEqual(unclear)
    expect(refused(['pita'], false)).toEqual(unclear)
    expect(refused(all)).toBe(null)
  })

  it('[S137] is all that was made, once it is made', () => {
    const made = given(send(onTheSide), start, { type: 'finish', ...at('1A') })
    const held = onward(made, {
      type: 'tellNeed',
      ...at('1A'),
      asked: 'not-sure',
      needs: [],
    })
    expect(refusalOf(when(held, answer(['pita'])))).toEqual({
      code: 'thrown-out-whole',
      build: '1A',
      because: 'made',
    })
    expect(foodInIt(running(held), buildIn(held, '1A'))).toEqual({ whole: 'made', staysOut: [] })
    expect(codeOf(when(held, answer()))).toBe(null)
  })
})

/** Changed to something that goes without a component. */
const goesWithout = (component: string): Given => ({
  type: 'change',
  readBack: true,
  ...at('1A'),
  to: { ...onTheSide, parts: { ...onTheSide.parts, [component]: NOT_IN } },
})
const NOT_IN = { placement: 'no', portions: 0, because: 'asked' } as const
/** So that what happens next has another time. */
const later = (told: Told): Told => ({ ...told, state: { ...told.state, at: told.state.at + 1 } })

describe('a wrong scoop in a kept-apart build', () => {
  const suits = choose(
    'garden-chicken',
    { cheddar: 'no', almonds: 'no', 'yogurt-sauce': 'no' },
    { base: 'rice', ...needs({ code: 'milk', handling: 'keep-apart', reason: 'allergy' }) },
  )
  const soil: Given = { type: 'soilPan', pan: 'pan-rice', by: 'cheddar' }
  const making = ready(send(suits), start)
  const whole = { code: 'thrown-out-whole', build: '1A', because: 'wrong-scoop' }

  it('[S138] throws all of it out', () => {
    const soiled = onward(making, soil)
    expect(buildIn(soiled, '1A').hold?.reason).toBe('contact')
    expect(refusalOf(when(soiled, answer(['rice', 'chicken'])))).toEqual(whole)
    const out = onward(soiled, answer())
    expect(accountOf(out, 'slaw').wasted).toBe(ofPortions('slaw', 1))
  })

  it('[S138] throws all of it out also once the pan was changed, or a need was told after it', () => {
    const changed = onward(making, soil, changePan('pan-rice', 900_000))
    expect(refusalOf(when(changed, answer(['rice'])))).toEqual(whole)
    const told = onward(making, soil, {
      type: 'tellNeed',
      ...at('1A'),
      asked: 'needs',
      needs: [{ code: 'egg', handling: 'keep-apart', reason: null }],
    })
    expect(buildIn(told, '1A').hold?.reason).toBe('need')
    expect(refusalOf(when(told, answer(['rice'])))).toEqual(whole)
  })

  it('[S138] throws all of it out also where only what was told late keeps it apart', () => {
    const told = given(
      send(choose('garden-chicken')),
      start,
      { ...soil, pan: 'pan-slaw' },
      {
        type: 'tellNeed',
        ...at('1A'),
        asked: 'needs',
        needs: [{ code: 'milk', handling: 'keep-apart', reason: null }],
      },
    )
    expect(refusalOf(when(told, answer(['pita'])))).toEqual(whole)
  })

  it('[S138] throws all of it out once the clock was set back: a changed pan isn’t told by its time', () => {
    const tell: Given = {
      type: 'tellNeed',
      ...at('1A'),
      asked: 'needs',
      needs: [{ code: 'egg', handling: 'keep-apart', reason: null }],
    }
    const told = onward(making, soil, changePan('pan-rice', 900_000), tell)
    const back = happening(
      happening(told, [{ type: 'clockJumped', byMs: -3_600_000 }], null),
      [{ type: 'clockConfirmed' }],
      null,
    )
    expect(refusalOf(when(back, answer(['rice'])))).toEqual(whole)
  })

  it('[S138] leaves a kept-apart build without one, and a plain build with one, as it is', () => {
    expect(codeOf(when(onward(making, cancel), answer(['rice'])))).toBe(null)
    const plain = given(send(onTheSide), start, { ...soil, pan: 'pan-slaw' }, cancel)
    expect(codeOf(when(plain, answer(['pita'])))).toBe(null)
  })
})

describe('a lidded cup', () => {
  const staysOut = (told: Told) => foodInIt(running(told), buildIn(told, '1A')).staysOut
  const refused = { code: 'cup-stays-out', build: '1A', component: 'yogurt-sauce' }
  const ways: Readonly<Record<string, Told>> = {
    'its pan was changed since': onward(stopped, changePan('pan-yogurt-sauce', 40)),
    'its pan is to be thrown out or off sale': onward(stopped, {
      type: 'readTemperature',
      id: 'pan-yogurt-sauce',
      ...read(60),
    }),
    'its pan was thrown out': onward(stopped, {
      type: 'throwOut',
      what: 'pan',
      id: 'pan-yogurt-sauce',
      reason: 'quality',
      initials: 'KT',
    }),
    'it may be of a build that was taken back': onward(
      given(send(onTheSide), start, { type: 'finish', ...at('1A') }),
      { type: 'takeBack', ...at('1A'), made: false },
      cancel,
    ),
  }

  it.each(Object.entries(ways))('[S139] isn’t put back where %s', (_, told) => {
    expect(staysOut(told)).toEqual(['yogurt-sauce'])
    expect(refusalOf(when(told, answer(without('yogurt-sauce'))))).toEqual(refused)
    expect(codeOf(when(told, answer(without('chicken'))))).toBe(null)
  })

  const jumped = (told: Told, byMs: number): Told =>
    happening(told, [{ type: 'clockJumped', byMs }], null)
  const confirmed = (told: Told): Told => happening(told, [{ type: 'clockConfirmed' }], null)
  const HOUR = 3_600_000
  const change = changePan('pan-yogurt-sauce', 40)

  it('[S139] isn’t put back once the clock was set back: no time tells any more what came when', () => {
    const before = confirmed(jumped(onward(stopped, change), -HOUR))
    const after = onward(confirmed(jumped(stopped, -HOUR)), change)
    const forth = confirmed(jumped(jumped(stopped, HOUR), -HOUR))
    const begun = { type: 'buildStarted', ...at('1A') } as const
    const started = onward(happening(jumped(given(send(onTheSide)), -HOUR), [begun]), cancel)
    for (const told of [before, jumped(stopped, -HOUR), after, forth, confirmed(started)])
      expect(staysOut(told)).toEqual(['yogurt-sauce'])
  })

  it('[S139] is put back where the clock went ahead, or it was begun anew since it was set back', () => {
    expect(staysOut(confirmed(jumped(stopped, HOUR)))).toEqual([])
    const anew = onward(
      confirmed(jumped(given(send(onTheSide), start), -HOUR)),
      goesWithout('slaw'),
      answer(undefined, false),
    )
    expect(staysOut(onward(later(anew), start, cancel))).toEqual([])
  })

  it('[S139] is put back where its pan stands as it did when the build was started', () => {
    expect(staysOut(stopped)).toEqual([])
    const counted = onward(stopped, { type: 'correct', pan: 'pan-yogurt-sauce', amount: 1 })
    expect(staysOut(counted)).toEqual([])
  })

  it('[S139] is asked of what is on the side: what else wasn’t in it never left its pan', () => {
    const changed = onward(stopped, changePan('pan-chicken', 900_000))
    expect(staysOut(changed)).toEqual([])
    expect(codeOf(when(changed, answer(without('chicken'))))).toBe(null)
  })
})
