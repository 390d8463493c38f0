import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Answer } from '#lib/protocol/wire.ts'
import { stateHash } from '#lib/service/state-hash.ts'
import { createTinyServer, settled, type TinyServer } from '#tests/support/crew.ts'
import { step } from '#tests/support/histories.ts'
import { batches, choose, load, ofPortions, parsed, send } from '#tests/support/service.ts'
import type { Step } from '#tests/support/spare-station.ts'
import { isShort, stretched } from '#tests/support/stretch.ts'
import { createWire } from '#tests/support/wires.ts'

type Act =
  | { readonly do: 'send'; readonly screen: number; readonly step: Step }
  | {
      readonly do: 'connect' | 'cut' | 'forget' | 'pulse' | 'serve' | 'show' | 'time'
      readonly screen: number
    }
  | { readonly do: 'serve busy' | 'serve snapshot'; readonly screen: number }
  | { readonly do: 'open'; readonly screen: number }

const screenIndex = fc.nat({ max: 2 })
const doing = (
  weight: number,
  what: Exclude<Act['do'], 'send'>,
): { weight: number; arbitrary: fc.Arbitrary<Act> } => ({
  weight,
  arbitrary: screenIndex.map((screen) => ({ do: what, screen })),
})

/** Often an order that can be accepted, else anything. */
const commanded: fc.Arbitrary<Step> = fc.oneof(
  fc.constantFrom<Step>(
    () => send(choose('harbor-tuna')),
    () => send(choose('garden-chicken')),
  ),
  step,
)

const act: fc.Arbitrary<Act> = fc.oneof(
  {
    weight: 20,
    arbitrary: fc.record({
      do: fc.constant('send' as const),
      screen: screenIndex,
      step: commanded,
    }),
  },
  doing(30, 'serve'),
  doing(40, 'show'),
  doing(6, 'serve busy'),
  doing(6, 'serve snapshot'),
  doing(6, 'cut'),
  doing(9, 'connect'),
  doing(4, 'forget'),
  doing(4, 'pulse'),
  doing(6, 'time'),
  doing(1, 'open'),
)

const loadAll = (server: TinyServer, service: string): void => {
  for (const [index, one] of batches().entries())
    server.take(service, `batch-${service}-${index}`, parsed(one))
  for (const component of [
    'pita',
    'rice',
    'chicken',
    'beans',
    'tuna',
    'slaw',
    'cheddar',
    'peppers',
  ]) {
    const one = load(`pan-${component}`, ofPortions(component, 20))
    server.take(service, `load-${service}-${component}`, parsed(one))
  }
}

interface Sent {
  readonly id: string
  readonly answers: Answer[]
}

/** Plays it, then lets every wire come back and everything arrive. */
const play = async (acts: readonly Act[], isRushed: boolean) => {
  const server = createTinyServer()
  let services = 1
  const openNext = () => {
    const service = `s-${services}`
    services += 1
    server.open(service)
    loadAll(server, service)
  }
  openNext()
  const wires = [0, 1, 2].map((index) => createWire(server, index))
  const sent: Sent[] = []

  const doOne = (one: Act): void => {
    const wire = wires[one.screen]
    if (!wire) return
    const asSnapshot = one.do === 'serve snapshot'
    const isBusy = one.do === 'serve busy'
    wire.collect(asSnapshot, isBusy)
    switch (one.do) {
      case 'send': {
        const { client } = wire.screen
        const given = one.step(client.view().state)
        if (given.type === 'open' || client.view().service === null) return
        const id = `sent-${sent.length}`
        const answers: Answer[] = []
        sent.push({ id, answers })
        void client.send(parsed(given), id).then((answer) => answers.push(answer))
        return
      }
      case 'serve':
      case 'serve busy':
      case 'serve snapshot':
        wire.serve()
        return
      case 'time':
        wire.screen.timers.pass()
        return
      case 'open':
        openNext()
        return
      default:
        wire[one.do]()
    }
  }

  for (const wire of wires) wire.connect()
  for (const one of acts) {
    doOne(one)
    if (!isRushed) await settled()
  }

  let rounds = 0
  for (const wire of wires) wire.connect()
  while (rounds < 12) {
    rounds += 1
    for (const wire of wires) {
      wire.collect(false, false)
      while (!wire.isQuiet()) {
        wire.serve()
        wire.show()
        await settled()
        wire.collect(false, false)
      }
      if (rounds < 4) wire.pulse()
      wire.screen.timers.pass()
      await settled()
    }
  }
  return { server, wires, sent }
}

const check = ({ server, wires, sent }: Awaited<ReturnType<typeof play>>): void => {
  const service = server.current() ?? ''
  const hash = stateHash(server.stateOf(service))
  for (const { screen } of wires) {
    const view = screen.client.view()
    expect(view).toMatchObject({
      service,
      link: 'live',
      position: server.eventsOf(service).length,
      pending: [],
    })
    expect(stateHash(view.state)).toBe(hash)
    expect(screen.timers.waiting()).toBe(0)
  }
  const applied = server.all()
  for (const { id, answers } of sent) {
    expect(answers).toHaveLength(1)
    // What a command brought about stands together, each of it once.
    const own = applied.filter((event) => event.command === id)
    expect(own.length > 0).toBe(answers[0]?.answer === 'accepted')
    const first = own[0]?.position ?? 0
    expect(own.map(({ position }) => position)).toEqual(own.map((_, index) => first + index))
    expect(own.filter(({ type }) => type === own[0]?.type)).toHaveLength(own.length > 0 ? 1 : 0)
    expect(answers[0]?.answer).not.toBe('not taken')
  }
}

const RUNS = { numRuns: stretched(120), seed: 20_261_125 }
const acts = fc.array(act, { minLength: 20, maxLength: 150, size: 'max' })

describe('three screens on bad wires', () => {
  it('[Y20] end with the state of the server, and every command applied and answered once', async () => {
    let cuts = 0
    let accepted = 0
    await fc.assert(
      fc.asyncProperty(acts, fc.boolean(), async (all, isRushed) => {
        const played = await play(all, isRushed)
        check(played)
        cuts += all.filter((one) => one.do === 'cut').length
        accepted += played.sent.filter(({ answers }) => answers[0]?.answer === 'accepted').length
      }),
      RUNS,
    )
    if (isShort) return
    expect(cuts).toBeGreaterThan(100)
    expect(accepted).toBeGreaterThan(100)
  })
})
