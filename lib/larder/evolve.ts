/** Folds what happened into the state of the larder. Decides nothing and asks no clock. */
import { withDelivery } from '#lib/larder/deliveries.ts'
import type { LarderRecorded, LotSetAside } from '#lib/larder/event.ts'
import { type GoneLot, goneIn, type LarderState, type Lot, lotIn } from '#lib/larder/lot.ts'

/** So many that are gone are remembered, so that who asks for one is told where it went. */
const MOST_GONE = 200
const MOST_READINGS = 24

const remembered = (gone: LarderState['gone'], id: string, one: GoneLot): LarderState['gone'] => {
  const { [id]: _, ...others } = gone
  return Object.fromEntries([...Object.entries(others), [id, one]].slice(-MOST_GONE))
}

const requireAmount = (amount: number): void => {
  if (!Number.isSafeInteger(amount) || amount < 1) throw new Error(`a lot of ${amount}`)
}

const setAside = (
  { lot, amount, food }: LotSetAside,
  at: number,
): Readonly<Record<string, Lot>> => {
  requireAmount(amount)
  const isBound = food.kept === 'frozen' ? food.frozen !== null : food.dateMark !== null
  if (!isBound && food.kept !== 'dry') throw new Error(`no date of ${lot}`)
  return {
    [lot]: {
      ...food,
      amount,
      setAsideAt: at,
      since: at,
      version: 1,
      place: null,
      bound: null,
      unreadSince: null,
    },
  }
}

/** @throws where there is no such lot */
const lotOf = (state: LarderState, id: string): Lot => {
  const lot = lotIn(state, id)
  if (!lot) throw new Error(`there is no lot ${id}`)
  return lot
}

const withLot = (
  state: LarderState,
  id: string,
  change: (lot: Lot) => Partial<Lot>,
): LarderState => {
  const lot = lotOf(state, id)
  return { ...state, lots: { ...state.lots, [id]: { ...lot, ...change(lot) } } }
}

/** @throws where it is more than there is, or nothing */
const takenOut = (
  state: LarderState,
  id: string,
  amount: number,
  gone: Omit<GoneLot, 'component' | 'version' | 'lot'>,
): LarderState => {
  const lot = lotOf(state, id)
  requireAmount(amount)
  if (amount > lot.amount) throw new Error(`${amount} of ${lot.amount} in lot ${id}`)
  const version = lot.version + 1
  if (amount < lot.amount)
    return withLot(state, id, () => ({ amount: lot.amount - amount, version }))
  const { [id]: _, ...lots } = state.lots
  const kept = gone.how === 'another-class' ? { ...lot, version } : null
  return {
    ...state,
    lots,
    gone: remembered(state.gone, id, { ...gone, component: lot.component, version, lot: kept }),
  }
}

const back = (state: LarderState, id: string): LarderState => {
  const gone = goneIn(state, id)
  if (!gone?.lot || lotIn(state, id)) throw new Error(`lot ${id} can't come back`)
  const { [id]: _, ...others } = state.gone
  const lot = { ...gone.lot, version: gone.version + 1 }
  return { ...state, gone: others, lots: { ...state.lots, [id]: lot } }
}

const fold = (state: LarderState, event: LarderRecorded): LarderState => {
  const { at } = event
  switch (event.type) {
    case 'lotSetAside':
      if (lotIn(state, event.lot) || goneIn(state, event.lot))
        throw new Error(`there is a lot ${event.lot} already`)
      return { ...state, lots: { ...state.lots, ...setAside(event, at) } }
    case 'lotRead':
      return withLot(state, event.lot, (lot) => {
        const { reading, result, presentUntil = lot.presentUntil } = event
        const bound =
          result === 'out'
            ? {
                why:
                  lot.kept === 'cooling' ? ('cooling-missed' as const) : ('out-of-limits' as const),
                since: at,
              }
            : lot.bound
        if (lot.kept !== 'cooling')
          return {
            bound,
            unreadSince: null,
            readings: [...lot.readings, reading].slice(-MOST_READINGS),
          }
        const cooling = [...lot.cooling, reading]
        return result === 'cooled'
          ? { cooling, kept: 'cold', since: at, readings: [reading], presentUntil: null }
          : { cooling, bound, presentUntil }
      })
    case 'lotTaken':
      return takenOut(state, event.lot, event.amount, { at, how: 'taken' })
    case 'lotThrownOut':
      return takenOut(state, event.lot, event.amount, { at, how: 'thrown-out' })
    case 'lotGone':
      return takenOut(state, event.lot, event.amount, { at, how: 'another-class' })
    case 'lotBack':
      return back(state, event.lot)
    case 'lotLabelConfirmed':
      return withLot(state, event.lot, ({ labels, before }) => ({
        labels: { ...labels, [event.ingredient]: event.version },
        before: [
          ...before,
          ...event.before.map((label) => ({ ingredient: event.ingredient, label })),
        ],
      }))
    case 'lotMoved':
      return withLot(state, event.lot, () => ({ place: event.place }))
    case 'lotFrozen':
      return withLot(state, event.lot, () => ({
        kept: 'frozen',
        frozen: event.frozen,
        since: at,
        readings: [],
        unreadSince: null,
      }))
    case 'lotThawed':
      return withLot(state, event.lot, () => ({
        kept: 'cold',
        frozen: null,
        dateMark: event.dateMark,
        since: at,
        readings: [],
        unreadSince: null,
      }))
    case 'lotPastDate':
      return withLot(state, event.lot, () => ({ bound: { why: 'date', since: at } }))
    case 'lotCoolingMissed':
      return withLot(state, event.lot, () => ({ bound: { why: 'cooling-missed', since: at } }))
    case 'lotReadingMissed':
      return withLot(state, event.lot, () => ({ unreadSince: event.due ?? at }))
    case 'larderClockJumped':
      // Back again it is asked about too: what was recorded meanwhile has the wrong time.
      return { ...state, clockJump: { byMs: (state.clockJump?.byMs ?? 0) + event.byMs } }
    case 'larderClockConfirmed':
      return { ...state, clockJump: null }
    case 'deliveryReceived':
      return { ...state, deliveries: withDelivery(state.deliveries, event.food, at, null) }
    case 'deliverySentBack':
      return { ...state, deliveries: withDelivery(state.deliveries, event.food, at, event.why) }
  }
}

/**
 * The larder after an event.
 * @throws where the event can't have happened: such an event is never committed
 */
export const evolveLarder = (state: LarderState, event: LarderRecorded): LarderState => ({
  ...fold(state, event),
  at: event.type === 'larderClockConfirmed' ? event.wall : Math.max(state.at, event.at),
  position: event.position,
})
