import { describe, expect, test } from 'vitest'
import type { Act } from '#lib/rooms/orders/views/counter-act.ts'
import { orderToKeep, restoredOrder } from '#lib/rooms/orders/views/kept-order.ts'
import { nextStep } from '#lib/rooms/orders/views/next-step.ts'
import { act } from '#lib/rooms/orders/views/order-act.ts'
import type { LeftCommand } from '#lib/rooms/orders/views/order-answered.ts'
import { IDLE, type Ordering, settleAll } from '#lib/rooms/orders/views/ordering.ts'
import type { RunningState } from '#lib/service/state.ts'
import {
  at,
  choose,
  given,
  onward,
  ready,
  running,
  send,
  type Told,
} from '#tests/support/service.ts'

const chicken = send(choose('garden-chicken'))
const TOLD = ready(chicken)
const STATE = running(TOLD)
const taps = (from: Ordering, ...list: Act[]): Ordering =>
  list.reduce((so, one) => act(so, one, STATE), from)

const kept = (ordering: Ordering, state = STATE): string => {
  const text = orderToKeep(ordering, state.service)
  if (text === null) throw new Error('nothing to keep')
  return text
}
const reloaded = (ordering: Ordering, state: RunningState = STATE): Ordering | null =>
  restoredOrder(kept(ordering), state)

const none: Act = { act: 'asked-none' }
const milk: Act = { act: 'need', code: 'milk' }
const half = taps(
  IDLE,
  none,
  { act: 'choose', item: 'garden-chicken' },
  { act: 'tap', component: 'cheddar' },
  { act: 'more', component: 'chicken' },
  { act: 'another' },
  milk,
  { act: 'said-needs' },
  { act: 'choose', item: 'bean-and-pepper' },
  { act: 'paid' },
)
const changed = (text: string, change: (value: Record<string, unknown>) => unknown): string =>
  JSON.stringify(change(JSON.parse(text)))

describe('a page that is loaded anew', () => {
  test('[C58] goes on with what was half typed, build by build, and what was read stays read', () => {
    const back = reloaded(half)
    expect(back).toEqual({ ...half, sent: [], drafts: back?.drafts })
    expect(back?.drafts.map(({ item }) => item)).toEqual(['garden-chicken', 'bean-and-pepper'])
    const choices = (of: Ordering) => settleAll(of, STATE).map(({ settled }) => settled?.choice)
    expect(choices(back ?? IDLE)).toEqual(choices(half))
    expect(nextStep(back ?? IDLE, STATE)).toEqual(nextStep(half, STATE))
  })

  test('[C58] what changed meanwhile is to be read again, all of it', () => {
    const one = taps(IDLE, none, { act: 'choose', item: 'garden-chicken' })
    const now = running(onward(TOLD, { type: 'stopSelling', what: 'component', id: 'slaw' }))
    const back = reloaded(one, now)
    expect(back && nextStep(back, now)).toEqual({ step: 'say-again', index: 0 })
    expect(nextStep(reloaded(one) ?? IDLE, STATE)).toEqual({ step: 'send' })
  })

  test('[C58] is told of nothing once it was sent or started over', () => {
    const sending = taps(half, { act: 'go-to', index: 0 }, { act: 'send', id: 'c-1' })
    for (const over of [sending, taps(half, { act: 'drop' }, { act: 'start-over' }), IDLE])
      expect(orderToKeep(over, STATE.service)).toBeNull()
  })

  test('[C58] keeps needs, and no name and no reason', () => {
    const told = taps(
      IDLE,
      milk,
      { act: 'reason', code: 'milk', reason: 'faith' },
      { act: 'said-needs' },
      { act: 'name', name: 'Juno' },
      { act: 'choose', item: 'bean-and-pepper' },
    )
    expect(kept(told)).toContain('milk')
    expect(kept(told)).not.toMatch(/Juno|faith/)
    expect(reloaded(told)).toMatchObject({ name: '', step: 'ask' })
  })

  test('[C58] what had a reason comes back kept apart and asked about, never weaker', () => {
    const told = taps(
      IDLE,
      { act: 'need', code: 'gluten' },
      { act: 'reason', code: 'gluten', reason: 'coeliac' },
      { act: 'handling', code: 'gluten' },
    )
    expect(told.drafts[0]?.needs).toMatchObject([{ handling: 'leave-out' }])
    const back = reloaded(told)
    expect(back).toMatchObject({ step: 'ask', drafts: [{ asked: 'needs' }] })
    expect(back?.drafts[0]?.needs).toEqual([
      { code: 'gluten', handling: 'keep-apart', reason: null },
    ])
    const plain = taps(IDLE, milk, { act: 'handling', code: 'milk' })
    expect(reloaded(plain)?.drafts).toMatchObject(plain.drafts)
  })

  test('[C58] agreement and acceptance are asked for anew', () => {
    const agreed = taps(
      IDLE,
      milk,
      { act: 'said-needs' },
      { act: 'choose', item: 'bean-and-pepper' },
      { act: 'turn', index: 0 },
      { act: 'agree' },
    )
    expect(agreed.drafts[0]?.agreed).not.toBeNull()
    expect(reloaded(agreed)?.drafts[0]).toMatchObject({ agreed: null, accepted: null })
    expect(reloaded(taps(agreed, { act: 'turn', index: 0 }))?.step).toBe('choose')
  })

  test('[C58] a change goes on while its build can be changed, and with its needs', () => {
    const change = taps(
      IDLE,
      { act: 'change-build', ...at('1A') },
      { act: 'tap', component: 'slaw' },
    )
    expect(reloaded(change)).toMatchObject({ changing: at('1A'), step: 'choose' })
    const over = (told: Told) => restoredOrder(kept(change), running(told))
    expect(over(onward(TOLD, { type: 'cancel', ...at('1A') }))).toBeNull()
    const egg = [{ code: 'egg', handling: 'keep-apart', reason: 'allergy' }] as const
    const held = onward(TOLD, { type: 'tellNeed', ...at('1A'), asked: 'needs', needs: [...egg] })
    expect(over(held)?.drafts[0]?.needs).toEqual(egg)
  })

  test('[C58] a need that was told goes on asking about the ticket’s other builds', () => {
    const two = ready(send(choose('garden-chicken'), choose('garden-chicken')))
    const egg = [{ code: 'egg', handling: 'keep-apart', reason: null }] as const
    const told = { asked: 'needs', needs: egg } as const
    const after = running(
      onward(two, { type: 'tellNeed', ...at('1A'), asked: 'needs', needs: [...egg] }),
    )
    const asking = act(IDLE, { act: 'tell-need', ...at('1A') }, running(two))
    const text = kept(act(asking, milk, running(two)), running(two))
    expect(restoredOrder(text, running(two))).toMatchObject({ step: 'ask', telling: at('1A') })
    const others = act(asking, { act: 'need-told', ...at('1A'), told }, after)
    expect(restoredOrder(kept(others, after), after)).toMatchObject({
      step: 'others',
      telling: at('1A'),
      others: others.others,
    })
  })

  test('[C58] numbers that nobody has told yet stay, with or without an order', () => {
    const arrived = {
      id: 'c-7',
      sent: { kind: 'ticket', id: 'c-7' },
      items: ['harbor-tuna'],
    } as const
    expect(reloaded({ ...IDLE, arrived: [arrived] })).toEqual({ ...IDLE, arrived: [arrived] })
    expect(reloaded({ ...half, arrived: [arrived] })).toMatchObject({
      arrived: [arrived],
      paid: true,
    })
  })

  test('[C58] another service’s order, an older shape or anything else is nothing', () => {
    const text = kept(half)
    const others: readonly (string | null)[] = [
      null,
      '',
      'null',
      '[]',
      '{',
      changed(text, (one) => ({ ...one, shape: 0 })),
      changed(text, (one) => ({ ...one, service: 's-other' })),
      changed(text, ({ arrived: _, ...one }) => one),
      changed(text, (one) => ({ ...one, order: { ...(one.order as object), drafts: [] } })),
      changed(text, (one) => ({ ...one, order: { ...(one.order as object), current: 2 } })),
      text.replace('"keep-apart"', '"apart"'),
      text.replace('"portions":2', '"portions":99'),
      text.replaceAll('bean-and-pepper', 'no-such-item'),
    ]
    for (const one of others) {
      expect(one).not.toBe(text)
      expect(restoredOrder(one, STATE)).toBeNull()
    }
    expect(restoredOrder(text, running(given()))).not.toBeNull()
  })

  test('[C58] comes back only where nothing was typed since', () => {
    const restored: Act = { act: 'restored', ordering: half }
    expect(act(IDLE, restored, STATE)).toMatchObject({ drafts: half.drafts })
    const since = taps(IDLE, milk)
    expect(act(since, restored, STATE)).toEqual(since)
  })

  test('[C57][C58] what was answered before it came back is told, too, once and typed over or not', () => {
    const ticket = (id: string) =>
      ({ id, sent: { kind: 'ticket', id }, items: ['harbor-tuna'] }) as const
    const before: Ordering = { ...half, arrived: [ticket('c-7')] }
    const restored: Act = { act: 'restored', ordering: before }
    const sent = send(choose('harbor-tuna')) as LeftCommand
    const late = (from: Ordering, id: string) =>
      act(from, { act: 'left-accepted', id, sent }, STATE)
    const ids = (one: Ordering) => one.arrived.map(({ id }) => id)
    const answered = late(late(IDLE, 'c-7'), 'c-8')
    expect(ids(act(answered, restored, STATE))).toEqual(['c-7', 'c-8'])
    expect(act(answered, restored, STATE).drafts).toEqual(half.drafts)
    expect(ids(act(taps(late(IDLE, 'c-8'), milk), restored, STATE))).toEqual(['c-7', 'c-8'])
    expect(ids(late(act(IDLE, restored, STATE), 'c-7'))).toEqual(['c-7'])
    const refused = {
      act: 'came-back',
      id: 'c-9',
      sent,
      note: { kind: 'not-taken', because: { code: 'busy' } },
    } as const
    const back = act(act(IDLE, refused, STATE), restored, STATE)
    expect(back.returned.map(({ id }) => id)).toEqual(['c-9'])
  })

  test('[C58] where a reason is asked about again, the other builds are read by what was said, too', () => {
    const two = taps(
      IDLE,
      none,
      { act: 'choose', item: 'garden-chicken' },
      { act: 'another' },
      milk,
      { act: 'reason', code: 'milk', reason: 'faith' },
      { act: 'said-needs' },
      { act: 'choose', item: 'bean-and-pepper' },
    )
    const now = running(onward(TOLD, { type: 'stopSelling', what: 'component', id: 'slaw' }))
    const back = reloaded(two, now)
    expect(back).toMatchObject({ step: 'ask', current: 1 })
    expect(back?.drafts[0]?.said).toMatchObject({ key: two.drafts[0]?.said?.key, statements: [] })
    const again = act(back ?? IDLE, { act: 'said-needs' }, now)
    expect(again.drafts[1]?.said).toMatchObject({ statements: [] })
    expect(nextStep(again, now)).toMatchObject({ step: 'say-again' })
  })
})
