/** Commands about batches, readings, clocks, and what is loaded or thrown out. */
import type { z } from 'zod'
import {
  decideFinishBatch,
  decideRecordCooking,
  decideStartBatch,
  finishBatchSchema,
  recordCookingSchema,
  startBatchSchema,
} from '#lib/service/commands/batch.ts'
import {
  decideRecordCooling,
  decideRecordReheating,
  recordCoolingSchema,
  recordReheatingSchema,
} from '#lib/service/commands/cooling.ts'
import type { Circumstances, Decision } from '#lib/service/commands/decision.ts'
import {
  answerHandedOverSchema,
  decideAnswerHandedOver,
} from '#lib/service/commands/handed-over.ts'
import {
  changePanSchema,
  decideChangePan,
  decideLoad,
  decideTopUp,
  loadSchema,
  topUpSchema,
} from '#lib/service/commands/load.ts'
import {
  decideReadShelf,
  decideResolveShelf,
  readShelfSchema,
  resolveShelfSchema,
} from '#lib/service/commands/shelf.ts'
import {
  decideReadTemperature,
  decideResolveOffSale,
  readTemperatureSchema,
  resolveOffSaleSchema,
} from '#lib/service/commands/temperature.ts'
import { decideThrowOut, throwOutSchema } from '#lib/service/commands/throw-out.ts'
import { decideStartTimeClock, startTimeClockSchema } from '#lib/service/commands/time-clock.ts'
import type { ServiceState } from '#lib/service/state.ts'

export const FOOD_SCHEMAS = [
  startBatchSchema,
  recordCookingSchema,
  finishBatchSchema,
  recordCoolingSchema,
  recordReheatingSchema,
  startTimeClockSchema,
  loadSchema,
  changePanSchema,
  topUpSchema,
  readTemperatureSchema,
  resolveOffSaleSchema,
  readShelfSchema,
  resolveShelfSchema,
  throwOutSchema,
  answerHandedOverSchema,
] as const

type FoodCommand = z.infer<(typeof FOOD_SCHEMAS)[number]>

export const decideFood = (
  state: ServiceState,
  command: FoodCommand,
  circumstances: Circumstances,
): Decision => {
  switch (command.type) {
    case 'startBatch':
      return decideStartBatch(state, command, circumstances)
    case 'recordCooking':
      return decideRecordCooking(state, command, circumstances)
    case 'finishBatch':
      return decideFinishBatch(state, command, circumstances)
    case 'recordCooling':
      return decideRecordCooling(state, command, circumstances)
    case 'recordReheating':
      return decideRecordReheating(state, command, circumstances)
    case 'startTimeClock':
      return decideStartTimeClock(state, command, circumstances)
    case 'load':
      return decideLoad(state, command, circumstances)
    case 'changePan':
      return decideChangePan(state, command, circumstances)
    case 'topUp':
      return decideTopUp(state, command, circumstances)
    case 'readTemperature':
      return decideReadTemperature(state, command, circumstances)
    case 'resolveOffSale':
      return decideResolveOffSale(state, command, circumstances)
    case 'readShelf':
      return decideReadShelf(state, command, circumstances)
    case 'resolveShelf':
      return decideResolveShelf(state, command, circumstances)
    case 'throwOut':
      return decideThrowOut(state, command)
    case 'answerHandedOver':
      return decideAnswerHandedOver(state, command, circumstances)
  }
}
