import { useState } from 'react'
import { tareOf } from '#lib/rooms/pans/facts/capacity.ts'
import { type ScaleUnit, weightMg } from '#lib/rooms/pans/views/weight-entry.ts'
import type { HowMuch } from '#lib/safety/ends.ts'
import { stockOf } from '#lib/service/held-stock.ts'
import type { Placed } from '#lib/service/place.ts'
import type { RunningState } from '#lib/service/state.ts'

export interface EndAmount {
  readonly how: HowMuch
  setHow(how: HowMuch): void
  readonly text: string
  setText(text: string): void
  readonly unit: ScaleUnit
  setUnit(unit: ScaleUnit): void
  /** Portions that were counted. */
  readonly portions: number
  setPortions(portions: number): void
  /** As it is, in the component's unit; null while it isn't told. */
  readonly amount: number | null
  readonly each: number
  /** Portions that it held when it was loaded or counted last. */
  readonly fullPortions: number
  readonly isPieces: boolean
}

/** What is left at a place: as it is believed, until it is weighed with its pan, counted or seen. */
export const useEndAmount = (state: RunningState, place: Placed): EndAmount => {
  const { what, id, component } = place
  const portion = state.portions[component]
  const each = portion?.amount ?? 1
  const [how, setHow] = useState<HowMuch>('not-checked')
  const [text, setText] = useState('')
  const [unit, setUnit] = useState<ScaleUnit>('lb')
  const [portions, setPortions] = useState(Math.round(place.amount / each))
  const full = what === 'batch' ? place.amount : (stockOf(state, what, id)?.full ?? place.amount)
  const tare = what === 'batch' ? 0 : (tareOf(state, id) ?? 0)
  const gross = weightMg(text, unit)
  const net = gross === null || gross < tare ? null : gross - tare
  const counted = portions === Math.round(place.amount / each) ? place.amount : portions * each
  return {
    how,
    setHow,
    text,
    setText,
    unit,
    setUnit,
    portions,
    setPortions,
    amount: how === 'weighed' ? net : how === 'not-checked' ? place.amount : counted,
    each,
    fullPortions: Math.round(full / each),
    isPieces: portion?.unit === 'piece',
  }
}
