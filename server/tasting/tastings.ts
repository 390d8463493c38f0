/**
 * Takes what is asked of tastings, one after the other. It has the documents of stations, its own
 * tables and the second file, and no log: no service and no larder is in its reach.
 */
import type { CorrectedYield } from '#lib/recipes/measured-yield.ts'
import { toNumber } from '#lib/recipes/rational.ts'
import { hashOf } from '#lib/service/state-hash.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { cardTexts } from '#lib/tasting/card-of.ts'
import type { TastingCommand } from '#lib/tasting/command.ts'
import { decideTasting, tastingFactor } from '#lib/tasting/decide.ts'
import type { MarkAnswer, TastingAnswer, TastingTold, YieldsNow } from '#lib/tasting/http.ts'
import { tastingApart } from '#lib/tasting/stream.ts'
import { isToCome, type TasterTold, type Tasting, type ToldByTaster } from '#lib/tasting/tasting.ts'
import { type MarkYield, withMarks } from '#lib/tasting/yield-marks.ts'
import { correctedBy, type YieldSaved } from '#lib/tasting/yields.ts'
import type { Guests } from '#server/guests/port.ts'
import { type TastingStore, yieldId } from '#server/tasting/sqlite.ts'
import { createYieldMarks } from '#server/tasting/yield-marks.ts'

export interface Tastings {
  of(station: string): Promise<readonly TastingTold[]>
  all(): readonly Tasting[]
  /** Settles when the answer is durable; null where there is no such station. */
  submit(id: string, command: TastingCommand): Promise<TastingAnswer | null>
  yields(station: string): readonly YieldSaved[]
  /** With the initials of who took one out. */
  yieldsTold(station: string): Promise<Pick<YieldsNow, 'yields' | 'initials'>>
  /** Settles when the answer is durable; null where there is no such station. */
  mark(id: string, asked: MarkYield): Promise<MarkAnswer | null>
  /** Initials of who marked a saved yield, of marks of such times. */
  forgetMarks(isToGo: (at: number) => boolean): Promise<void>
  /** By component, for its card as the document has it. */
  corrected(station: StationDocument): Readonly<Record<string, CorrectedYield>>
  idle(): Promise<void>
}

export interface TastingPorts {
  readonly store: TastingStore
  readonly guests: Pick<Guests, 'put' | 'of' | 'services' | 'forget'>
  readonly station: (id: string) => StationDocument | null
  /** What was measured elsewhere, of the station's real services. */
  readonly measured: (station: string) => readonly YieldSaved[]
  readonly now: () => number
}

/** Ids of cards of a document: a hash, so that a card is told from what it was before. */
const cardHashes = (station: StationDocument): Readonly<Record<string, string>> =>
  Object.fromEntries(
    Object.entries(cardTexts(station)).map(([component, text]) => [component, hashOf(text)]),
  )

/** Portions of each component's load, as the house says how it is made again. */
const loadsOf = ({ components }: StationDocument): Readonly<Record<string, number | null>> =>
  Object.fromEntries(components.map(({ id, remake }) => [id, remake?.portionsPerLoad ?? null]))

export const createTastings = ({
  store,
  guests,
  station,
  measured,
  now,
}: TastingPorts): Tastings => {
  let turn: Promise<unknown> = Promise.resolve()
  const yields = (id: string) => withMarks([...measured(id), ...store.yields(id)], store.marks(id))
  const marks = createYieldMarks({ store, guests, now, yields })

  const inTurn = <Result>(act: () => Promise<Result>): Promise<Result> => {
    const next = turn.then(act)
    turn = next.catch(() => undefined)
    return next
  }

  const toldIn = async (tasting: Tasting): Promise<ToldByTaster> => {
    const bodies = isToCome(tasting) ? await guests.of(tastingApart(tasting.id), 'needs') : {}
    return Object.fromEntries(
      tasting.tasters.flatMap(({ number, told }): [number, TasterTold][] => {
        const body = told === null ? undefined : bodies[told]
        return body === undefined ? [] : [[number, JSON.parse(body)]]
      }),
    )
  }

  /** What is of people goes first, so that nothing names a telling that isn't there. */
  const setApart = async (id: string, tasting: string, command: TastingCommand): Promise<void> => {
    if (command.type === 'askTaster') {
      const { asked, needs } = command
      await guests.put(tastingApart(tasting), id, [
        { kind: 'needs', body: JSON.stringify({ asked, needs }) },
      ])
    }
    if ((command.type === 'endTasting' || command.type === 'readTasting') && command.initials)
      await guests.put(tastingApart(tasting), id, [{ kind: 'initials', body: command.initials }])
  }

  /** Of a taster who was asked anew the answer of before; all of them once it is over. */
  const forgotten = async (before: Tasting | null, after: Tasting): Promise<void> => {
    const apart = tastingApart(after.id)
    if (!isToCome(after)) await guests.forget(apart, ['needs'])
    const still = new Set(after.tasters.map(({ told }) => told))
    const gone = (before?.tasters ?? []).flatMap(({ told }) =>
      told === null || still.has(told) ? [] : [told],
    )
    if (gone.length > 0) await guests.forget(apart, ['needs'], gone)
  }

  const savedBy = ({ id, tasted, on, portions }: Tasting, document: StationDocument) => {
    const [cards, loads] = [cardHashes(document), loadsOf(document)]
    return tasted.flatMap(({ component, typed, ratio, saved }): YieldSaved[] => {
      const card = cards[component]
      if (!saved || card === undefined) return []
      const factor = toNumber(tastingFactor(document, component, portions))
      const load = loads[component] ?? null
      const row = { id: yieldId(id, component), component, card, on, ratio, factor, typed, load }
      return [{ ...row, from: 'tasting', out: null }]
    })
  }

  const act = async (id: string, command: TastingCommand): Promise<TastingAnswer | null> => {
    const isNew = command.type === 'planTasting'
    const tastingId = isNew ? id : command.tasting
    const kept = store.find(tastingId)
    const document = station(isNew ? command.station : (kept?.tasting.station ?? ''))
    if (document === null)
      return isNew ? null : { answer: 'refused', refusal: { code: 'no-such-tasting' } }
    // What is of people leaves no trace beside the second file: needs aren't in the fingerprint.
    const said = hashOf({ ...command, needs: undefined, asked: undefined, initials: undefined })
    const known = kept?.taken[id]
    if (known !== undefined)
      return known === said
        ? { answer: 'accepted', tasting: tastingId }
        : { answer: 'refused', refusal: { code: 'id-used-for-something-else' } }
    const before = kept?.tasting ?? null
    const told = before ? await toldIn(before) : {}
    const decided = decideTasting(before, id, command, { now: now(), station: document, told })
    if ('refusal' in decided) return { answer: 'refused', refusal: decided.refusal }
    await setApart(id, tastingId, command)
    const { tasting } = decided
    store.put(
      { tasting, taken: { ...kept?.taken, [id]: said } },
      command.type === 'endTasting' ? savedBy(tasting, document) : [],
    )
    await forgotten(before, tasting)
    return { answer: 'accepted', tasting: tastingId }
  }

  return {
    of: async (asked) => {
      const all = store.all(asked).map(({ tasting }) => tasting)
      const toCome = all.filter(isToCome).sort((a, b) => a.startsAt - b.startsAt)
      const over = all.filter(({ stage }) => stage === 'over').reverse()
      return Promise.all(
        [...toCome, ...over].map(async (tasting) => ({ tasting, told: await toldIn(tasting) })),
      )
    },
    all: () => store.all().map(({ tasting }) => tasting),
    submit: (id, command) => inTurn(() => act(id, command)),
    yields,
    yieldsTold: marks.told,
    mark: (id, asked) =>
      inTurn(async () => (station(asked.station) === null ? null : marks.mark(id, asked))),
    forgetMarks: (isToGo) => inTurn(() => marks.forget(isToGo)),
    corrected: (document) =>
      correctedBy(yields(document.id), cardHashes(document), loadsOf(document)),
    idle: async () => {
      await turn
    },
  }
}
