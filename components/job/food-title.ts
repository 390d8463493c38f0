import { handedOverKind } from '#components/care/handed-over-said.ts'
import type { FoodTask } from '#components/job/chosen.ts'
import type { FoodWords } from '#components/job/use-food-words.ts'
import { componentIn } from '#lib/service/held-stock.ts'
import { componentAt } from '#lib/service/place.ts'
import type { RunningState } from '#lib/service/state.ts'
import { sayBuild } from '#lib/service/tickets.ts'
import { nameIn } from '#lib/station/name-in.ts'

/** What a place holds, or what was taken out of one, by its name. */
export const foodName = (state: RunningState, what: string, id: string): string =>
  sayBuild(nameIn(state.station)(componentAt(state, what, id) ?? id))

/** Whole portions in a pan of the line. */
export const portionsIn = (state: RunningState, pan: string): number => {
  const each = state.portions[componentIn(state.station, pan) ?? '']?.amount ?? 1
  return Math.round((state.pans[pan]?.amount ?? 0) / each)
}

export const foodTitle = (words: FoodWords, state: RunningState, food: FoodTask): string => {
  const name = nameIn(state.station)
  switch (food.task) {
    case 'put':
      return food.way === 'change' && portionsIn(state, food.pan) > 0
        ? words.forms.changeAway(foodName(state, 'pan', food.pan), portionsIn(state, food.pan))
        : words.forms.putTitle[food.way](foodName(state, 'pan', food.pan))
    case 'fill-backup':
      return words.forms.fillTitle(foodName(state, 'backup', food.id))
    case 'read':
      return words.forms.readTitle(foodName(state, food.what, food.id))
    case 'clock':
      return words.forms.clockTitle(foodName(state, food.what, food.id))
    case 'resolve':
      return words.forms.resolveTitle(foodName(state, food.what, food.id))
    case 'handed-over':
      return words.givenOut.title(foodName(state, food.what, food.id), handedOverKind(food.what))
    case 'weigh':
      return words.forms.weighTitle(foodName(state, 'pan', food.pan))
    case 'waste':
      return words.forms.wasteTitle(foodName(state, 'pan', food.pan))
    case 'keep':
      return words.forms.saveTitle(name(food.component))
    case 'scoop':
      return state.standIns[food.component]
        ? words.forms.scoopBackTitle(name(food.component))
        : words.forms.scoopTitle(name(food.component))
    case 'short':
      return words.forms.shortTitle(name(food.component))
    case 'read-here':
      return words.readHere[food.of].title
    case 'behind':
      return words.forms.behindTitle
    case 'start-batch':
      return words.forms.startTitle
    case 'batch':
      return words.forms.batchTitle(
        foodName(state, 'batch', food.id),
        words.sayTime(state.batches[food.id]?.startedAt ?? state.at, state.station.timeZone),
      )
    case 'throw-out':
      return food.early
        ? words.forms.throwEarly(foodName(state, food.early.what, food.early.id))
        : words.forms.throwTitle
  }
}
