import type { FoodTask } from '#components/pans/chosen.ts'
import { handedOverKind } from '#components/pans/handed-over-said.ts'
import { nameIn } from '#lib/menu/name-in.ts'
import { componentIn, throwOutKey } from '#lib/service/held-stock.ts'
import type { RunningState } from '#lib/service/state.ts'
import { sayTime } from '#lib/words/clock-en.ts'
import { formWords as words } from '#lib/words/food-forms-en.ts'
import { handedOverWords } from '#lib/words/handed-over-en.ts'
import { shelfWords } from '#lib/words/shelf-en.ts'

/** What a pan, a back-up pan or a batch holds, or what was taken out of one, by its name. */
export const foodName = (state: RunningState, id: string): string =>
  nameIn(state.station)(
    state.batches[id]?.component ??
      componentIn(state.station, id) ??
      state.toThrowOut[throwOutKey('rest', id)]?.rest?.component ??
      id,
  )

/** Whole portions in a pan of the line. */
export const portionsIn = (state: RunningState, pan: string): number => {
  const each = state.portions[componentIn(state.station, pan) ?? '']?.amount ?? 1
  return Math.round((state.pans[pan]?.amount ?? 0) / each)
}

export const foodTitle = (state: RunningState, food: FoodTask): string => {
  const name = nameIn(state.station)
  switch (food.task) {
    case 'put':
      return food.way === 'change' && portionsIn(state, food.pan) > 0
        ? words.changeAway(foodName(state, food.pan), portionsIn(state, food.pan))
        : words.putTitle[food.way](foodName(state, food.pan))
    case 'fill-backup':
      return words.fillTitle(foodName(state, food.id))
    case 'read':
      return words.readTitle(foodName(state, food.id))
    case 'clock':
      return words.clockTitle(foodName(state, food.id))
    case 'resolve':
      return words.resolveTitle(foodName(state, food.id))
    case 'handed-over':
      return handedOverWords.title(foodName(state, food.id), handedOverKind(food.what))
    case 'weigh':
      return words.weighTitle(foodName(state, food.pan))
    case 'waste':
      return words.wasteTitle(foodName(state, food.pan))
    case 'keep':
      return words.keepTitle(name(food.component))
    case 'scoop':
      return state.standIns[food.component]
        ? words.scoopBackTitle(name(food.component))
        : words.scoopTitle(name(food.component))
    case 'short':
      return words.shortTitle(name(food.component))
    case 'shelf':
      return shelfWords.title
    case 'behind':
      return words.behindTitle
    case 'start-batch':
      return words.startTitle
    case 'batch':
      return words.batchTitle(
        foodName(state, food.id),
        sayTime(state.batches[food.id]?.startedAt ?? state.at, state.station.timeZone),
      )
    case 'throw-out':
      return food.early ? words.throwEarly(foodName(state, food.early.id)) : words.throwTitle
  }
}
