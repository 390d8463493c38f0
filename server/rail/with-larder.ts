/** What a service does with the larder, and what is appended to both. */
import { lotGuards } from '#lib/larder/guards.ts'
import type { LarderState } from '#lib/larder/lot.ts'
import type { Appended, Guard } from '#server/event-log/port.ts'
import type { Batch, Ordered } from '#server/rail/batch.ts'
import type { RailPorts } from '#server/rail/rail-ports.ts'

/** As it is known; read on where something of it is asked, or another was there first. */
export const larderNow = async (
  { larder }: RailPorts,
  orders: readonly Ordered[],
  again: boolean,
): Promise<LarderState | null> => {
  if (!larder) return null
  const isAsked = orders.some(({ command }) => command.type === 'takeFromLarder')
  return again || isAsked ? larder.newest() : larder.state()
}

/** What happens in the larder with a service's events is appended with them, or neither is. */
export const appendedWith = (
  { service, log, larder }: RailPorts,
  batch: Pick<Batch, 'entries' | 'answers' | 'larder'> & { readonly position: number },
  before: LarderState | null,
  guards: readonly Guard[],
): Promise<Appended> => {
  const { entries, answers, position: after } = batch
  const own = { service, after, entries, answers }
  if (!larder || before === null || batch.larder.length === 0) return log.appendAll([own], guards)
  return log.appendAll(
    [own, { service: larder.stream, after: before.position, entries: batch.larder, answers: [] }],
    [...guards, ...lotGuards(before, batch.larder)],
  )
}
