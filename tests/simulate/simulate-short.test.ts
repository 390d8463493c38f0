/** A few whole services, for every day: what must hold of each, and that advice beats the fixed rule. */
import { describe, expect, it } from 'vitest'
import { total } from '#lib/estimate/service-counts.ts'
import { stakesOf } from '#lib/rooms/advice/facts/stakes.ts'
import { pastTaught } from '#lib/rooms/day/facts/past-services.ts'
import { levelOf } from '#lib/rooms/pans/facts/levels.ts'
import type { ServiceEvent } from '#lib/service/events/event.ts'
import { demoStation } from '#server/demo-station.ts'
import type { Outcome } from '#tests/simulate/planner.ts'
import { type Played, playService } from '#tests/simulate/play.ts'
import { mostAnHour } from '#tests/simulate/report.ts'
import { dayOf, recordsOf, schoolOf } from '#tests/simulate/world.ts'

const SCHOOLS = 8
const SERVICES = 2
const PAST_DAYS = 6

const services = Array.from({ length: SCHOOLS }, (_, number) => schoolOf(4_000 + number)).flatMap(
  (school) => {
    const taught = pastTaught(recordsOf(school, PAST_DAYS, 'plain'), demoStation, 'real')
    return Array.from({ length: SERVICES }, (_, index) => {
      const day = dayOf(school, index)
      const play = (policy: Parameters<typeof playService>[3]) =>
        playService(school.seed * SERVICES + index, day, taught, policy)
      return { advice: play('advice'), quarter: play('quarter') }
    })
  },
)
const played = services.flatMap(({ advice, quarter }) => [advice, quarter])

const sum = (values: readonly number[]): number => values.reduce((all, value) => all + value, 0)
const isOf =
  <Type extends ServiceEvent['type']>(type: Type) =>
  (event: ServiceEvent): event is Extract<ServiceEvent, { readonly type: Type }> =>
    event.type === type

/** What left the pans by finished builds and beyond their count, by component, from the events alone. */
const usedBy = ({ events, end }: Played): Readonly<Record<string, number>> => {
  const used: Record<string, number> = {}
  const add = (id: string, amount: number) => {
    used[id] = (used[id] ?? 0) + amount
  }
  const wells = end.station.line.wells.flatMap((well) => well.pans)
  for (const { took, uncounted } of events.filter(isOf('buildFinished'))) {
    for (const { pan, amount } of took)
      add(wells.find((one) => one.id === pan)?.component ?? 'of no pan', amount)
    for (const [id, amount] of Object.entries(uncounted)) add(id, amount)
  }
  return used
}

describe('sixteen simulated services, each with advice and with a refill at one quarter', () => {
  it('[K7][K8] nothing comes or goes by itself, and nothing is owed at the end', () => {
    for (const one of played) {
      const used = usedBy(one)
      expect(Object.keys(used).length).toBeGreaterThan(5)
      for (const { id } of demoStation.components) {
        const { inPan, onTickets } = levelOf(one.end, id)
        const account = one.end.accounts[id]
        expect(account?.used ?? 0, id).toBe(used[id] ?? 0)
        expect((account?.loaded ?? 0) + (account?.corrected ?? 0), id).toBe(
          inPan + (account?.used ?? 0) + (account?.wasted ?? 0) + (account?.takenAway ?? 0),
        )
        expect(onTickets, id).toBe(0)
      }
    }
  })

  it('[Z7] each build that was sent is handed over or cancelled, and counted as demand unless taken back', () => {
    for (const { events, end } of played) {
      const { counts } = end
      const sent = sum(events.filter(isOf('ticketSent')).map(({ builds }) => builds.length))
      const cancelled = events.filter(isOf('buildCancelled')).length
      const handedOver = events.filter(isOf('buildHandedOver')).length
      expect(handedOver).toBeGreaterThan(30)
      expect(handedOver + cancelled).toBe(sent)
      expect(total(counts.builds)).toBeLessThanOrEqual(sent)
      expect(total(counts.builds)).toBeGreaterThanOrEqual(sent - cancelled)
      expect(sum(Object.values(counts.items).map(total))).toBe(total(counts.builds))
    }
  })

  it('[Z34] at most six are told in any hour, and there is something to tell', () => {
    expect(sum(services.map(({ advice }) => advice.toldAt.length))).toBeGreaterThan(SERVICES)
    for (const { advice } of services) expect(mostAnHour(advice.toldAt)).toBeLessThanOrEqual(6)
  })

  it('[Z33] in a rush nothing is told that could wait', () => {
    for (const { advice } of services) expect(advice.toldInRush).toBe(0)
  })

  it('[Z26] no batch is started of what can’t be made again', () => {
    expect(sum(services.map(({ advice }) => advice.batches))).toBeGreaterThan(SERVICES)
    for (const { advice } of services) expect(advice.impossible).toBe(0)
  })

  it('[Z24] whoever follows the advice has fewer gaps than the fixed rule and no more left over, and loses less by both', () => {
    const gaps = (way: 'advice' | 'quarter') => sum(services.map((one) => one[way].gaps.length))
    const cents = (way: 'advice' | 'quarter', of: (id: string, one: Outcome) => number) =>
      sum(
        services.flatMap((one) =>
          Object.entries(one[way].outcomes).map(([id, outcome]) => of(id, outcome)),
        ),
      )
    const left = (way: 'advice' | 'quarter') =>
      cents(way, (id, one) => one.left * stakesOf(demoStation, id).leftCents)
    const cost = (way: 'advice' | 'quarter') => cents(way, (_, one) => one.costCents)
    expect(gaps('advice')).toBeLessThan(gaps('quarter'))
    expect(left('advice')).toBeLessThanOrEqual(left('quarter'))
    expect(cost('advice')).toBeLessThan(cost('quarter'))
  })
})
