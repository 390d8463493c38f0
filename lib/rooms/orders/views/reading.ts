/** What stands there to be read back, and what changed of it since it was said. */
import { saidOf } from '#lib/rooms/care/facts/said.ts'
import { foodOfSettled, type Settled } from '#lib/rooms/orders/facts/draft.ts'
import type { Offer } from '#lib/rooms/orders/facts/offer.ts'
import type { Reading, Statement } from '#lib/rooms/orders/facts/statement.ts'
import { readBack } from '#lib/rooms/orders/views/read-back.ts'

export const readingOf = (offer: Offer, settled: Settled): Reading => {
  const statements = readBack(offer, settled)
  const said = saidOf(offer.state, settled.choice) ?? []
  const { fromBackup, choice } = settled
  const food = foodOfSettled(settled)
  return {
    key: JSON.stringify([food, fromBackup, choice.caution, said, statements]),
    statements,
    said,
  }
}

/** A statement as it stands against what was said: `gone` was said and holds no more. */
export interface Marked {
  readonly statement: Statement
  readonly mark: 'same' | 'new' | 'gone'
}

const textOf = (statement: Statement): string => JSON.stringify(statement)

/** What no longer holds stands before what took its place, else before the price at the end. */
export const markedSince = (
  before: readonly Statement[] | null,
  now: readonly Statement[],
): readonly Marked[] => {
  if (before === null) return now.map((statement) => ({ statement, mark: 'same' }))
  const [had, has] = [before, now].map((list) => new Set(list.map(textOf)))
  const gone = before.filter((one) => !has?.has(textOf(one)))
  const placeOf = ({ say }: Statement): number => {
    const place = now.findIndex((one) => one.say === say)
    return place === -1 ? now.length - 1 : place
  }
  return now.flatMap((statement, place): Marked[] => [
    ...gone
      .filter((one) => placeOf(one) === place)
      .map((one) => ({ statement: one, mark: 'gone' as const })),
    { statement, mark: had?.has(textOf(statement)) ? 'same' : 'new' },
  ])
}
